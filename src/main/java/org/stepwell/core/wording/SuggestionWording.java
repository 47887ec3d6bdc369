package org.stepwell.core.wording;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.ClassDip;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.DaySignal;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.Note;
import org.stepwell.core.tier.Requirement;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;

/**
 * Every sentence of a suggestion, in one language. The short ones first: {@link #reason} is what a tired teacher reads
 * in ten seconds; all else is one tap away. Nothing is said that is not in what is handed over.
 */
public final class SuggestionWording {
    private static final int NOTES_IN_A_REASON = 2;
    /** About ten seconds of a tired reader. */
    private static final int WORDS_IN_A_REASON = 45;

    private final Phrasebook words;
    private final Language language;
    private final Progression progression;

    /** @param progression for the phrases to look for; may be empty */
    public SuggestionWording(Language language, Progression progression) {
        this.language = language;
        this.words = language.phrases();
        this.progression = progression;
    }

    /**
     * A condition in three words: its name, what was measured, what was required.
     *
     * @param met whether that is enough
     */
    public record ConditionWords(String name, String measured, String required, boolean met) {}

    /** What is suggested, in two to five words. */
    public String headline(Suggestion one) {
        return switch (one.verdict()) {
            case MOVE -> upper(words.move(one.current(), one.suggested()));
            case STAY -> words.goesOn(one.current()).replaceFirst("\\.$", "");
            case NOT_ENOUGH -> upper(words.verdict(Verdict.NOT_ENOUGH));
        };
    }

    /** Why, in a few short sentences: what the rules go by, the note that matters most, another if there is room. */
    public String reason(Suggestion one) {
        List<String> sentences = new ArrayList<>();
        String first = ground(one);
        if (!first.isEmpty()) {
            sentences.add(first);
        }
        Set<Class<?>> told = new HashSet<>();
        for (Note note : one.notes()) {
            String sentence = words.note(note);
            boolean room = told.isEmpty() || words(String.join(" ", sentences)) + words(sentence) <= WORDS_IN_A_REASON;
            if (told.size() < NOTES_IN_A_REASON && room && told.add(note.getClass())) {
                sentences.add(sentence);
            }
        }
        return String.join(" ", sentences);
    }

    private static int words(String text) {
        return text.split("\\s+").length;
    }

    private String ground(Suggestion one) {
        return switch (one.verdict()) {
            case MOVE -> moved(one);
            case STAY -> stayed(one);
            case NOT_ENOUGH -> switch (one.rule()) {
                // The note says it all.
                case Suggestion.TOO_FEW_DUE, Suggestion.NOT_SEEN_LATELY -> "";
                case Suggestion.TOO_FEW_SESSIONS -> words.goesOn(one.current());
                default -> words.notEnough(one.looks(), one.missing());
            };
        };
    }

    private String moved(Suggestion one) {
        Condition lead = lead(one);
        return switch (lead == null ? Measure.CHANCE_ON_LEVEL : lead.required().measure()) {
            case SKILLS_BELOW, SKILLS_MEETING, SKILLS_MEETING_BEYOND -> words.daysSpeak(
                    one.current(), one.suggested(), lead.required().reviews());
            case CHECK_ALL_RIGHT -> words.checkSpeaks();
            default -> words.fits(one.suggested(), one.chance());
        };
    }

    /** Held back when what the nearest rule goes by holds today and something else is open. */
    private String stayed(Suggestion one) {
        Condition lead = lead(one);
        if (lead == null) {
            return words.goesOn(one.current()) + " " + words.fits(one.current(), one.chance());
        }
        Condition open = one.conditions().stream()
                .filter(c -> c.required().part() != Requirement.Part.ENOUGH && !c.met())
                .findFirst()
                .orElse(lead);
        boolean close = lead.met() || lead.held() > 0;
        if (close && one.towards() != null) {
            return words.goesOn(one.current()) + " "
                    + words.heldBack(one.current(), one.towards(), words.open(open, one.notBefore()));
        }
        boolean byDays = switch (lead.required().measure()) {
            case SKILLS_BELOW, SKILLS_MEETING, SKILLS_MEETING_BEYOND, CHECK_ALL_RIGHT -> true;
            default -> false;
        };
        return words.goesOn(one.current()) + " "
                + (byDays ? daysTell(one) : words.fits(one.current(), one.chance()));
    }

    private String daysTell(Suggestion one) {
        int meeting = count(one, DaySignal.MEETS);
        int below = count(one, DaySignal.BELOW);
        int all = one.skills().size() - count(one, DaySignal.TOO_FEW);
        return words.daysTell(meeting, below, all);
    }

    private static int count(Suggestion one, DaySignal signal) {
        return (int) one.skills().stream().filter(s -> s.signal() == signal).count();
    }

    private static @Nullable Condition lead(Suggestion one) {
        return one.conditions().stream()
                .filter(c -> c.required().part() == Requirement.Part.NEEDS)
                .findFirst()
                .orElse(null);
    }

    /** Every note, most important first. */
    public List<String> notes(Suggestion one) {
        return one.notes().stream().map(words::note).toList();
    }

    /** What is missing before the rules can speak; empty when nothing is. */
    public String missing(Suggestion one) {
        return one.missing().isEmpty() ? "" : words.notEnough(one.looks(), one.missing());
    }

    /** Each condition, in the order of the rule file. */
    public List<ConditionWords> conditions(Suggestion one) {
        return one.conditions().stream()
                .map(c -> new ConditionWords(
                        words.measure(c.required().measure()),
                        words.measured(c),
                        words.required(c.required()),
                        c.met()))
                .toList();
    }

    /** What a rule file asks for: what is measured, and what is required of it. */
    public String requirement(Requirement required) {
        return words.measure(required.measure()) + ": " + words.required(required);
    }

    /** The chance of each tier as counts, support first. */
    public List<String> chances(Suggestion one) {
        List<String> all = new ArrayList<>();
        for (Tier tier : Tier.values()) {
            all.add(words.fits(tier, one.chances().of(tier)));
        }
        return all;
    }

    /** A caution. */
    public String caution(Caution caution) {
        return words.caution(caution);
    }

    /** What would settle the answer, or change it. */
    public String settle(Suggestion one, Details details) {
        return details.settle()
                .map(s -> words.settle(
                        s,
                        details.settled(),
                        words.answer(one.current(), s.reached()),
                        words.answer(one.current(), s.missed())))
                .orElseGet(() -> words.notSettled(details.settled()));
    }

    /** The looks that mattered most; one sentence when leaving any single one out makes no difference worth telling. */
    public List<String> weighty(Suggestion one, Details details) {
        if (!details.weighty().isEmpty() && noneDecides(one, details)) {
            return List.of(words.noneDecides(
                    details.weighty().stream().map(Details.Weighty::look).toList(), one.suggested(), one.chance()));
        }
        return details.weighty().stream()
                .map(w -> {
                    boolean changes = w.verdictWithout() != one.verdict() || w.suggestedWithout() != one.suggested();
                    String changed = changes
                            ? words.answer(
                                    one.current(),
                                    new Details.Answer(
                                            w.verdictWithout(),
                                            w.suggestedWithout(),
                                            w.fitsWithout(),
                                            w.chanceWithout(),
                                            false))
                            : null;
                    return words.weighty(w.look(), one.suggested(), w.chanceWithout(), changed);
                })
                .toList();
    }

    /** The heaviest looks bound what any other could do: the same count of ten on both sides, and the same answer. */
    private static boolean noneDecides(Suggestion one, Details details) {
        double most = 0;
        for (Details.Weighty look : details.weighty()) {
            if (look.verdictWithout() != one.verdict() || look.suggestedWithout() != one.suggested()) {
                return false;
            }
            most = Math.max(most, Math.abs(look.chanceWithout() - one.chance()));
        }
        int now = Figures.ofTen(one.chance());
        return Figures.ofTen(Math.max(0, one.chance() - most)) == now
                && Figures.ofTen(Math.min(1, one.chance() + most)) == now;
    }

    /** What to ask next at the table; empty when nothing is due. */
    public String ask(Details details) {
        return details.ask()
                .map(a -> words.ask(a, phrase(a.skill(), a.expected())))
                .orElse("");
    }

    private @Nullable String phrase(String skill, int step) {
        return progression.phrases().stream()
                .filter(p -> p.kind() == Progression.Phrase.Kind.PHRASE
                        && p.skill().equals(skill)
                        && p.step() != null
                        && p.step() == step
                        && p.language().equals(language.code()))
                .map(Progression.Phrase::text)
                .findFirst()
                .orElse(null);
    }

    /** What stands above the suggestions of a class. */
    public String dip(ClassDip dip) {
        return words.dip(dip);
    }

    /** The word for a tier in force. */
    public String tier(Tier tier) {
        return words.tier(tier);
    }

    /** The word for a verdict. */
    public String verdict(Verdict verdict) {
        return words.verdict(verdict);
    }

    /** The word for a kind of help. */
    public String help(Help help) {
        return words.help(help);
    }

    /** The word for a kind of evidence. */
    public String kind(Kind kind) {
        return words.kind(kind);
    }

    /** Month and day, without the year. */
    public String date(java.time.LocalDate day) {
        return words.date(day);
    }

    private static String upper(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
