package org.stepwell.core.progression;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A progression as data: skills in order with their prerequisites, and the phrases, help texts and error tags of each.
 *
 * @param code short name, such as {@code tens-and-ones}
 * @param skills in teaching order
 * @param phrases of all skills and languages
 */
public record Progression(String code, List<Skill> skills, List<Phrase> phrases) {

    /** Code of the help text which says that objects belong to the task at that step (kind {@link Phrase.Kind#HELP}). */
    public static final String OBJECTS_BELONG = "objects_belong";

    /** Code of the help text that lists numbers worth offering for a skill. */
    private static final String NUMBERS = "numbers";

    /** Code of the help texts that are questions to ask at the table, each for the step it can show. */
    private static final String ASK = "ask";

    /**
     * One skill.
     *
     * @param code such as {@code T05}, unique in the progression
     * @param title plain English words
     * @param needs what is normally there before a step of this skill is expected; warns, never blocks
     * @param standards codes of public standards, as written in the file
     */
    public record Skill(String code, String title, List<Need> needs, List<String> standards) {
        /** Copies the lists. */
        public Skill {
            needs = List.copyOf(needs);
            standards = List.copyOf(standards);
        }
    }

    /**
     * A prerequisite.
     *
     * @param beforeStep the step of the needing skill it is for; 1 = for the skill as a whole
     * @param skill the skill needed
     * @param step the step needed there, 1-5
     */
    public record Need(int beforeStep, String skill, int step) {}

    /**
     * Words to tap or to read.
     *
     * @param skill code of the skill
     * @param code snake_case, unique per skill and kind
     * @param step 1-5; {@code null} where none applies (error tags)
     * @param language {@code en} or {@code es}
     */
    public record Phrase(String skill, String code, @Nullable Integer step, String language, String text, Kind kind) {
        /** What the words are for. */
        public enum Kind {
            /** Tapped to log a look at the step. */
            PHRASE,
            /** A note on help, such as that objects belong to the task. */
            HELP,
            /** An error tag: says how it went wrong, never a step by itself. */
            ERROR
        }
    }

    /** Copies the lists. */
    public Progression {
        skills = List.copyOf(skills);
        phrases = List.copyOf(phrases);
    }

    /** The skill with this code. */
    public Optional<Skill> skill(String skillCode) {
        return skills.stream().filter(s -> s.code().equals(skillCode)).findFirst();
    }

    /** Whether objects are part of the task at this step, so that cubes are no help beyond it. */
    public boolean objectsBelong(String skillCode, int step) {
        return phrases.stream()
                .anyMatch(p -> p.kind() == Phrase.Kind.HELP
                        && p.code().equals(OBJECTS_BELONG)
                        && p.skill().equals(skillCode)
                        && p.step() != null
                        && p.step() == step);
    }

    /** Numbers worth offering for a skill, in order; empty when the progression lists none. */
    public List<String> numbers(String skillCode) {
        return phrases.stream().filter(p -> p.kind() == Phrase.Kind.HELP && p.code().equals(NUMBERS)
                && p.skill().equals(skillCode)).findFirst().map(p -> List.of(p.text().strip().split("\\s+")))
                .orElse(List.of());
    }

    /**
     * Questions to ask at the table, by the step each can show, lowest first, each in the languages there are (by code);
     * empty when the progression has none.
     */
    public SortedMap<Integer, Map<String, String>> questions(String skillCode) {
        SortedMap<Integer, Map<String, String>> byStep = new TreeMap<>();
        for (Phrase phrase : phrases) {
            if (phrase.kind() == Phrase.Kind.HELP && phrase.code().equals(ASK) && phrase.skill().equals(skillCode)
                    && phrase.step() != null) {
                byStep.computeIfAbsent(phrase.step(), step -> new TreeMap<>()).put(phrase.language(), phrase.text());
            }
        }
        return byStep;
    }

    /**
     * The skills to begin with: in the order of the files, each after those it needs.
     *
     * @param most how many at most
     */
    public List<Skill> first(int most) {
        List<Skill> chosen = new ArrayList<>();
        List<Skill> left = new ArrayList<>(skills);
        while (chosen.size() < most && !left.isEmpty()) {
            Set<String> known = chosen.stream().map(Skill::code).collect(Collectors.toSet());
            Skill next = left.stream().filter(s -> s.needs().stream().allMatch(n -> known.contains(n.skill())
                    || left.stream().noneMatch(l -> l.code().equals(n.skill())))).findFirst().orElseThrow();
            chosen.add(next);
            left.remove(next);
        }
        return List.copyOf(chosen);
    }

    /** Titles by skill code. */
    public Map<String, String> titles() {
        return skills.stream().collect(Collectors.toMap(Skill::code, Skill::title));
    }
}
