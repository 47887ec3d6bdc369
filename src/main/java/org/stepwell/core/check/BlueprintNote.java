package org.stepwell.core.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What to know about a blueprint before it is printed. Nothing of it blocks.
 *
 * @param kind what it is about
 * @param skill code of the skill; empty when it is about the whole check
 * @param count items it counts
 */
public record BlueprintNote(Kind kind, String skill, int count) {
    private static final int MANY = 30;

    /** What a note is about. */
    public enum Kind {
        /** Fewer than three items: nothing can be said about the skill. */
        TOO_FEW_FOR_A_STATEMENT,
        /** A skill of the unit that no item asks for. */
        NOT_ASKED,
        /** A skill that the unit does not have. */
        NOT_IN_THE_UNIT,
        /** More items than a first grader sits through. */
        LONG
    }

    /**
     * Reads a blueprint.
     *
     * @param unitSkills codes of the skills of the unit
     */
    public static List<BlueprintNote> of(List<CheckItem> items, Set<String> unitSkills) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        items.forEach(item -> counts.merge(item.skill(), 1, Integer::sum));
        List<BlueprintNote> notes = new ArrayList<>();
        counts.forEach((skill, count) -> {
            if (count < SkillResult.FEWEST_ITEMS) {
                notes.add(new BlueprintNote(Kind.TOO_FEW_FOR_A_STATEMENT, skill, count));
            }
            if (!unitSkills.isEmpty() && !unitSkills.contains(skill)) {
                notes.add(new BlueprintNote(Kind.NOT_IN_THE_UNIT, skill, count));
            }
        });
        for (String skill : new LinkedHashSet<>(unitSkills)) {
            if (!counts.containsKey(skill)) {
                notes.add(new BlueprintNote(Kind.NOT_ASKED, skill, 0));
            }
        }
        if (items.size() > MANY) {
            notes.add(new BlueprintNote(Kind.LONG, "", items.size()));
        }
        return notes;
    }

    /**
     * A blueprint to begin with: about twenty items shared out evenly over the skills, at least three each where twenty
     * items are enough for that.
     *
     * @param steps step to test by skill, in the order of the progression
     */
    public static List<CheckItem> proposal(Map<String, Integer> steps) {
        List<CheckItem> items = new ArrayList<>();
        int skills = steps.size();
        int at = 0;
        for (Map.Entry<String, Integer> skill : steps.entrySet()) {
            int own = Math.max(SkillResult.FEWEST_ITEMS, 20 / skills + (at < 20 % skills ? 1 : 0));
            for (int i = 0; i < own; i++) {
                items.add(new CheckItem("i%02d".formatted(items.size() + 1), skill.getKey(), skill.getValue(), "", ""));
            }
            at++;
        }
        return items;
    }
}
