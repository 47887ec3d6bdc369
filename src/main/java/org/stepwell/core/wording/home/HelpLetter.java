package org.stepwell.core.wording.home;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.stepwell.core.wording.Language;

/**
 * The page that tells a family of extra help: since when, with whom, how often, when they hear more, and that they may ask
 * for an evaluation at any time. What US law wants families told when help is tried: 34 CFR 300.309(b) and 300.311.
 *
 * @param language of all its sentences
 * @param lines its sentences, in order
 * @param school what the school adds in its own words; may be empty
 */
public record HelpLetter(Language language, List<String> lines, String school) {
    private static final int SCHOOL_DAYS_A_WEEK = 5;
    private static final List<String> ENGLISH = List.of("one", "two", "three", "four", "five");
    private static final List<String> SPANISH = List.of("un", "dos", "tres", "cuatro", "cinco");

    /**
     * What a draft rests on.
     *
     * @param name the child's given name
     * @param from first day of the help
     * @param givenBy who gives it, as it stands in letters
     * @param perWeek sessions a school week, at least 1
     * @param minutes of each
     * @param hearOn day by which the family hears how it goes
     * @param tryAtHome one thing to try, in words for home, when the progression has any
     * @param today day of the letter
     * @param otherNames names of other children, so that no month is written that one of them is called by
     */
    public record Facts(String name, LocalDate from, String givenBy, int perWeek, int minutes, LocalDate hearOn,
            Optional<String> tryAtHome, LocalDate today, Set<String> otherNames) {
        /** Copies the names. */
        public Facts {
            otherNames = Set.copyOf(otherNames);
        }
    }

    /** Copies the lines. */
    public HelpLetter {
        lines = List.copyOf(lines);
    }

    /** A draft in one language; the school's own text is the adult's to add. */
    public static HelpLetter draft(Facts facts, Language language) {
        boolean spanish = language == Language.SPANISH;
        HomePhrases phrases = new HomePhrases(language, facts.otherNames());
        String from = phrases.date(facts.from());
        String hear = phrases.date(facts.hearOn());
        List<String> lines = new ArrayList<>();
        if (facts.from().isAfter(facts.today())) {
            lines.add(spanish
                    ? "A partir del " + from + ", " + facts.name() + " va a trabajar en un grupo pequeño con "
                            + facts.givenBy() + "."
                    : "From " + from + " on, " + facts.name() + " will work in a small group with " + facts.givenBy() + ".");
        } else {
            lines.add(spanish
                    ? "Desde el " + from + ", " + facts.name() + " trabaja en un grupo pequeño con " + facts.givenBy() + "."
                    : "Since " + from + ", " + facts.name() + " works in a small group with " + facts.givenBy() + ".");
        }
        lines.add(often(facts, spanish));
        lines.add(spanish ? "El " + hear + " le diremos cómo va." : "On " + hear + " we will tell you how it is going.");
        facts.tryAtHome().ifPresent(lines::add);
        lines.add(phrases.questions(facts.name()).getFirst());
        lines.add(spanish ? "Puede pedir una evaluación a la escuela en cualquier momento."
                : "You may ask the school for an evaluation at any time.");
        return new HelpLetter(language, lines, "");
    }

    private static String often(Facts facts, boolean spanish) {
        int n = facts.perWeek();
        if (n > SCHOOL_DAYS_A_WEEK) {
            return spanish ? "Se reúnen " + n + " veces a la semana, " + facts.minutes() + " minutos cada vez."
                    : "They meet " + n + " times a week for " + facts.minutes() + " minutes.";
        }
        return spanish
                ? "Se reúnen " + SPANISH.get(n - 1) + (n == 1 ? " día" : " días") + " a la semana, " + facts.minutes()
                        + " minutos cada vez."
                : "They meet " + ENGLISH.get(n - 1) + (n == 1 ? " day" : " days") + " a week for " + facts.minutes()
                        + " minutes.";
    }

    /** All it says, the school's own words last. */
    public String text() {
        return Stream.concat(lines.stream(), Stream.of(school)).filter(s -> !s.isBlank()).collect(Collectors.joining("\n"));
    }
}
