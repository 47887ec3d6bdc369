package org.stepwell.core.wording.home;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HomeNote.Part;

/**
 * Drafts a page for home. Every claim on the child is one look, told with its day in the words the progression has for
 * parents; a sentence that would hold another child's name is left out.
 */
public final class HomeDrafter {
    /** Fewer looks than this since the last note, and the page says that there are few. */
    public static final int FEW = 3;
    private static final int EXAMPLES = 3;
    private static final int DAYS_OF_GROWTH = 7;

    private final HomeEvidence evidence;
    private final HomePhrases phrases;
    private final Language language;
    private final WordGuard guard;

    private HomeDrafter(HomeEvidence evidence, Language language) {
        this.evidence = evidence;
        this.language = language;
        this.guard = WordGuard.of(language);
        this.phrases = new HomePhrases(language, evidence.otherNames());
    }

    /** The draft for one child in one language. */
    public static HomeNote draft(HomeEvidence evidence, Language language) {
        return new HomeDrafter(evidence, language).draft();
    }

    private HomeNote draft() {
        List<CountedLook> told = evidence.looks().stream().filter(this::tellable).toList();
        List<CountedLook> news = told.stream().filter(l -> !l.day().isBefore(evidence.since())).toList();
        Growth growth = growth(told, news);
        Map<Part, List<String>> parts = new EnumMap<>(Part.class);
        List<String> can = new ArrayList<>(examples(news, growth));
        if (news.size() < FEW) {
            can.add(phrases.few(evidence.nextNote()));
        }
        parts.put(Part.CAN, can);
        parts.put(Part.GROWTH, growth == null ? List.of() : List.of(did(growth.then()), did(growth.now())));
        nextSkill().ifPresent(skill -> {
            int now = evidence.steps().getOrDefault(skill, 0);
            words(skill, "home_next", Math.min(5, now + 1)).ifPresent(text ->
                    parts.put(Part.NEXT, List.of(filled(text, nextNumber(skill)))));
            List<String> home = new ArrayList<>();
            words(skill, "home_try", now >= 3 ? 3 : 1).ifPresent(home::add);
            home.add(phrases.goodWays());
            parts.put(Part.AT_HOME, home);
        });
        parts.put(Part.ASK, phrases.questions(evidence.name()));
        parts.replaceAll((part, sentences) -> sentences.stream().filter(this::namesNobodyElse).toList());
        return new HomeNote(language, parts, firsts(told));
    }

    /** What was done alone or with things to hold, and is told in words that fit it. */
    private boolean tellable(CountedLook look) {
        boolean fitting = look.look().help() != Help.CUBES || look.step() != 4
                || evidence.progression().objectsBelong(look.skill(), 4);
        return look.valid() && !look.checkItem() && !look.notYet() && !look.slip() && fitting
                && !look.day().isAfter(evidence.today()) && words(look.skill(), "home_did", look.step()).isPresent();
    }

    private record Growth(CountedLook then, CountedLook now) {}

    /** The skill in which most changed: an early look, and a later one further on. */
    private @Nullable Growth growth(List<CountedLook> told, List<CountedLook> news) {
        Map<String, CountedLook> first = new LinkedHashMap<>();
        told.forEach(look -> first.putIfAbsent(look.skill(), look));
        return news.stream().map(now -> new Growth(Objects.requireNonNull(first.get(now.skill())), now))
                .filter(g -> g.now().step() > g.then().step()
                        && ChronoUnit.DAYS.between(g.then().day(), g.now().day()) >= DAYS_OF_GROWTH)
                .max(Comparator.comparingInt((Growth g) -> g.now().step() - g.then().step())
                        .thenComparing(g -> g.now().day()).thenComparing(g -> g.now().skill(),
                                Comparator.reverseOrder()))
                .orElse(null);
    }

    /** The furthest of each skill, the furthest skills first; the one told under growth only where nothing else is. */
    private List<String> examples(List<CountedLook> news, @Nullable Growth growth) {
        Map<String, CountedLook> best = new HashMap<>();
        for (CountedLook look : news) {
            best.merge(look.skill(), look, (a, b) -> b.step() >= a.step() ? b : a);
        }
        List<CountedLook> chosen = new ArrayList<>(best.values());
        chosen.sort(Comparator.comparingInt(CountedLook::step).reversed()
                .thenComparing(CountedLook::day, Comparator.reverseOrder()).thenComparing(CountedLook::skill));
        if (growth != null && chosen.size() > 1) {
            chosen.removeIf(look -> look.look().id().equals(growth.now().look().id()));
        }
        return chosen.stream().limit(EXAMPLES).sorted(Comparator.comparing(CountedLook::day)).map(this::did).toList();
    }

    private String did(CountedLook look) {
        String text = filled(words(look.skill(), "home_did", look.step()).orElseThrow(), number(look));
        boolean cubes = look.look().help() == Help.CUBES
                && !evidence.progression().objectsBelong(look.skill(), look.step());
        return phrases.onADay(look.day(), evidence.name(), text, cubes);
    }

    /** Days on which a skill was shown further on than ever before, from the second step on. */
    private List<LocalDate> firsts(List<CountedLook> told) {
        Map<String, Integer> furthest = new HashMap<>();
        List<LocalDate> days = new ArrayList<>();
        for (CountedLook look : told) {
            int before = furthest.getOrDefault(look.skill(), 1);
            if (look.step() > before) {
                furthest.put(look.skill(), look.step());
                days.add(look.day());
            }
        }
        return days;
    }

    /** The skill in hand with room to grow, else the one in hand. */
    private Optional<String> nextSkill() {
        return evidence.working().stream().filter(skill -> evidence.steps().getOrDefault(skill, 0) < 4).findFirst()
                .or(() -> evidence.working().stream().findFirst());
    }

    private @Nullable String number(CountedLook look) {
        String task = look.look().task();
        return task != null && task.matches("\\d{1,3}") ? task : null;
    }

    /** A number of the skill that the child has not had, so that the page points forward. */
    private @Nullable String nextNumber(String skill) {
        List<String> had = evidence.looks().stream().filter(l -> l.skill().equals(skill))
                .map(l -> String.valueOf(l.look().task())).toList();
        List<String> offered = evidence.progression().numbers(skill);
        return offered.stream().filter(n -> !had.contains(n)).findFirst()
                .or(() -> offered.stream().findFirst()).orElse(null);
    }

    private String filled(String text, @Nullable String number) {
        return text.replace("{number}", number == null ? phrases.aNumber() : number);
    }

    private Optional<String> words(String skill, String code, @Nullable Integer step) {
        return evidence.progression().phrases().stream().filter(p -> p.kind() == Phrase.Kind.HELP
                && p.skill().equals(skill) && p.code().equals(code) && p.language().equals(language.code())
                && Objects.equals(p.step(), step)).map(Phrase::text).findFirst();
    }

    private boolean namesNobodyElse(String sentence) {
        return guard.find(sentence, List.of(evidence.name()), evidence.otherNames(), List.of()).stream()
                .noneMatch(found -> found.kind() == WordGuard.Kind.CLASSMATE);
    }
}
