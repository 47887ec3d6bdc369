package org.stepwell.core.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.LookMaker;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Reviewer;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;

/**
 * No reason mentions anything that is not in the evidence. Each child of these made-up classes has adults, numbers and
 * days of its own, so that a word from somewhere else shows.
 */
class ReasonsRestOnEvidenceTest {
    private static final long SEED = 90210;
    private static final int CLASSES = 20;
    private static final int CHILDREN = 3;
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 20);
    private static final LocalDate RISE = LocalDate.of(2026, 3, 12);
    private static final List<LocalDate> REVIEWS = List.of(LocalDate.of(2026, 3, 6), LocalDate.of(2026, 3, 13));
    private static final List<String> SKILLS = List.of("A1", "A2", "A3");
    private static final List<String> ADULTS =
            List.of("Quill", "Rowan", "Sorrel", "Teasel", "Ulmus", "Viola");
    private static final Pattern SKILL = Pattern.compile("\\b[A-Z]\\d\\b");
    private static final Pattern ENGLISH_DATE = Pattern.compile(
            "\\b(January|February|March|April|May|June|July|August|September|October|November|December) (\\d+)\\b");
    private static final Pattern SPANISH_DATE = Pattern.compile("\\b(\\d+) de (enero|febrero|marzo|abril|mayo|junio|"
            + "julio|agosto|septiembre|octubre|noviembre|diciembre)\\b");
    private static final Pattern STEP = Pattern.compile("\\b(?:[Ss]tep|[Pp]aso) (\\d+)\\b");
    /** Numbers from 60 on are asked of children here and nothing counts as far. */
    private static final Pattern NUMBER = Pattern.compile("\\b([6-9]\\d|[1-9]\\d\\d)\\b");

    private record Told(String child, Suggestion said, ChildState state, List<Look> own, String text) {}

    private static ClassSetting setting() {
        List<PacingRow> rows = new ArrayList<>();
        SKILLS.forEach(s -> rows.add(new PacingRow(s, LocalDate.of(2026, 2, 2), LocalDate.of(2026, 2, 16), 3)));
        rows.add(new PacingRow("A3", null, RISE, 4));
        List<Progression.Skill> skills = List.of(
                skill("A1"), skill("A2"), skill("A3"), skill("B7", "A1"), skill("B8", "A1"));
        return new ClassSetting(new Progression("p", skills, List.of()), new Pacing(rows),
                new SchoolCalendar(List.of()), true);
    }

    private static Progression.Skill skill(String code, String... needs) {
        return new Progression.Skill(code, code,
                Stream.of(needs).map(n -> new Progression.Need(1, n, 3)).toList(), List.of());
    }

    /** Child c is seen on every third day, on no day on which another one is, by its own two adults, with its own numbers. */
    private static List<Look> looks(SplittableRandom random, int c) {
        List<LocalDate> days = LocalDate.of(2026, 2, 16).datesUntil(TODAY.plusDays(1))
                .filter(d -> d.getDayOfWeek().getValue() < 6 && d.toEpochDay() % CHILDREN == c).toList();
        int base = 1 + random.nextInt(4);
        boolean adultsDiffer = random.nextBoolean();
        List<Look> looks = new ArrayList<>();
        for (LocalDate day : days) {
            for (int n = random.nextInt(4); n > 0; n--) {
                int adult = adultsDiffer ? days.indexOf(day) % 2 : random.nextInt(2);
                int step = Math.clamp(base + random.nextInt(2) + (adultsDiffer ? 4 * adult - 2 : 0), 1, 5);
                LookMaker look = LookMaker.look("C" + c, SKILLS.get(adultsDiffer ? 0 : random.nextInt(3)), day, step)
                        .task(String.valueOf(60 + CHILDREN * random.nextInt(12) + c))
                        .by(ADULTS.get(2 * c + adult))
                        .kind(Kind.values()[random.nextInt(Kind.values().length)]);
                if (random.nextInt(3) == 0) {
                    look.help(Help.values()[random.nextInt(Help.values().length)]);
                }
                switch (random.nextInt(6)) {
                    case 0 -> look.tags("showed");
                    case 1 -> look.tags("mirror_written");
                    case 2 -> look.tags("not_valid");
                    default -> { }
                }
                looks.add(look.make());
            }
        }
        return looks;
    }

    private static ChildState state(SplittableRandom random, int c) {
        boolean support = random.nextBoolean();
        return new ChildState("C" + c, support ? Tier.SUPPORT : Tier.ON_LEVEL, support ? REVIEWS.getFirst() : null,
                REVIEWS, random.nextInt(4) == 0 ? LocalDate.of(2026, 3, 2) : null,
                random.nextInt(3) == 0 ? new ChildState.Dose(8, 3, 4, 1) : null,
                random.nextInt(3) == 0
                        ? List.of(new ChildState.OpenRequest(ChildState.OpenRequest.Kind.EVALUATION,
                                LocalDate.of(2026, 3, 11)))
                        : List.of());
    }

    private static List<Told> told(Language language, String rules, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<List<Look>> all = IntStream.range(0, CHILDREN).mapToObj(c -> looks(random, c)).toList();
        List<ChildState> states = IntStream.range(0, CHILDREN).mapToObj(c -> state(random, c)).toList();
        List<Look> together = all.stream().flatMap(List::stream).toList();
        List<Told> told = new ArrayList<>();
        for (int c = 0; c < CHILDREN; c++) {
            Reviewer reviewer =
                    new Reviewer(setting(), together, RuleFile.shipped(rules), Parameters.shipped());
            Suggestion said = reviewer.review(states, TODAY).suggestions().get(c);
            told.add(new Told("C" + c, said, states.get(c), all.get(c),
                    text(language, said, reviewer.details(states.get(c), TODAY))));
        }
        return told;
    }

    private static String text(Language language, Suggestion said, Details details) {
        SuggestionWording words = new SuggestionWording(language, setting().progression());
        List<String> all = new ArrayList<>(List.of(words.headline(said), words.missing(said),
                words.settle(said, details), words.ask(details)));
        all.addAll(List.of(words.reason(said).split("(?<=\\.) ")));
        all.addAll(words.notes(said));
        all.addAll(words.chances(said));
        all.addAll(words.weighty(said, details));
        return String.join("\n", all);
    }

    @ParameterizedTest
    @EnumSource
    void everySkillDateNumberAdultAndStepIsOfTheChildOrOfThePlanOfTheClass(Language language) {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < CLASSES; i++) {
            for (Told one : told(language, RuleFile.SHIPPED.get(i % 2), SEED + i)) {
                String where = "seed " + (SEED + i) + " " + language + " " + one.child() + "\n" + one.text() + "\n";
                holds(where, one.text(), SKILL, m -> m.group(), skillsOf(one), seen, "skill");
                holds(where, one.text(), NUMBER, m -> m.group(1), one.own().stream().map(Look::task)
                        .collect(Collectors.toSet()), seen, "number");
                holds(where, one.text(), language == Language.ENGLISH ? ENGLISH_DATE : SPANISH_DATE,
                        MatchResult::group, datesOf(one, language), seen, "date");
                holds(where, one.text(), STEP, m -> m.group(1), stepsOf(one), seen, "step");
                for (String adult : ADULTS) {
                    if (one.text().contains(adult)) {
                        seen.add("adult");
                        assertTrue(one.own().stream().anyMatch(l -> l.observer().equals(adult)), where + adult);
                    }
                }
            }
        }
        assertEquals(Set.of("skill", "number", "date", "step", "adult"), seen, "seed " + SEED);
    }

    private static void holds(String where, String text, Pattern pattern,
            Function<MatchResult, String> part, Set<String> allowed, Set<String> seen, String kind) {
        pattern.matcher(text).results().map(part).forEach(word -> {
            seen.add(kind);
            assertTrue(allowed.contains(word), where + kind + " " + word + " is not in " + allowed);
        });
    }

    /** Skills of the class's plan, and those that rest on the one others rest on. */
    private static Set<String> skillsOf(Told one) {
        Set<String> all = new TreeSet<>(SKILLS);
        if (one.said().notes().stream().anyMatch(n -> n.getClass().getSimpleName().equals("KeystoneMissed"))) {
            all.addAll(Set.of("B7", "B8"));
        }
        return all;
    }

    private static Set<String> datesOf(Told one, Language language) {
        Phrasebook words = language.phrases();
        Set<LocalDate> days = one.own().stream().map(Look::day).collect(Collectors.toSet());
        days.add(RISE);
        if (one.state().joined() != null) {
            days.add(one.state().joined());
        }
        one.state().open().forEach(o -> days.add(o.on()));
        if (one.said().notBefore() != null) {
            days.add(one.said().notBefore());
        }
        return days.stream().map(words::date).collect(Collectors.toSet());
    }

    /** Steps seen and expected, and their neighbors: what a further look may show. */
    private static Set<String> stepsOf(Told one) {
        Set<Integer> steps = new TreeSet<>(Set.of(2, 3, 4, 5));
        one.own().stream().map(Look::step).forEach(steps::add);
        return steps.stream().map(String::valueOf).collect(Collectors.toSet());
    }

    @ParameterizedTest
    @EnumSource
    void everyCircumstanceThatIsToldIsInTheEvidence(Language language) {
        Map<String, Predicate<Told>> needs = Map.of(
                "irror writing|en espejo", t -> tagged(t, "mirror_written"),
                "request for an evaluation|petición de evaluación", t -> !t.state().open().isEmpty(),
                " sessions| sesiones", t -> t.state().dose() != null,
                "New since|En la clase desde", t -> t.state().joined() != null,
                "ids? not count|más no cont", t -> tagged(t, "not_valid"),
                "Unit check and looks|La prueba y lo observado",
                t -> t.own().stream().anyMatch(l -> l.kind() == Kind.UNIT_CHECK),
                "two adults|dos personas", t -> t.own().stream().map(Look::observer).distinct().count() > 1,
                "cubes hidden|hide the cubes|cubos escondidos|esconda los cubos",
                t -> t.own().stream().anyMatch(l -> l.help() == Help.CUBES),
                "with cubes|con cubos", t -> t.own().stream().anyMatch(l -> l.help() == Help.CUBES),
                "Accept showing|Acepte que lo muestre", t -> tagged(t, "showed"));
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < CLASSES; i++) {
            for (Told one : told(language, RuleFile.SHIPPED.get(i % 2), SEED + i)) {
                needs.forEach((words, need) -> {
                    if (Pattern.compile(words).matcher(one.text()).find()) {
                        seen.add(words);
                        assertTrue(need.test(one), "seed " + SEED + " " + words + " in\n" + one.text());
                    }
                });
            }
        }
        assertTrue(seen.size() >= 6, "told at all: " + seen);
    }

    private static boolean tagged(Told one, String tag) {
        return one.own().stream().anyMatch(l -> l.tags().contains(tag));
    }

    @ParameterizedTest
    @EnumSource
    void whatWasSeenOfOthersChangesNoWordAboutAChild(Language language) {
        for (int i = 0; i < CLASSES; i++) {
            for (Told one : told(language, RuleFile.SHIPPED.get(i % 2), SEED + i)) {
                Reviewer alone = new Reviewer(setting(), one.own(), RuleFile.shipped(RuleFile.SHIPPED.get(i % 2)),
                        Parameters.shipped());
                Suggestion said = alone.review(List.of(one.state()), TODAY).suggestions().getFirst();
                String text = text(language, said, alone.details(one.state(), TODAY));
                assertEquals(withoutClass(text, language), withoutClass(one.text(), language), "seed " + (SEED + i));
            }
        }
    }

    /** Without the sentences about the class, which may stand in a reason where another one would have had room. */
    private static String withoutClass(String text, Language language) {
        String lesson = language == Language.ENGLISH ? "look at the lesson first." : "mire primero la lección.";
        return text.lines().filter(l -> !l.isBlank() && !l.contains(lesson)).distinct().sorted()
                .collect(Collectors.joining("\n"));
    }
}
