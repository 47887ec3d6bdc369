package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.DayStep;

/** Finds where so many children of a class are in the same place that the lesson comes first. */
final class Dips {
    /** One child alone says nothing about a lesson, however small the class. */
    private static final int FEWEST_CHILDREN = 2;

    private Dips() {}

    static List<ClassDip> of(List<Suggestion> suggestions, double share) {
        List<ClassDip> dips = new ArrayList<>();
        int moreHelp = (int) suggestions.stream().filter(Dips::towardHelp).count();
        add(dips, null, moreHelp, suggestions.size(), share);
        TreeMap<String, int[]> bySkill = new TreeMap<>();
        for (Suggestion suggestion : suggestions) {
            for (Suggestion.SkillSight skill : suggestion.skills()) {
                int[] counts = bySkill.computeIfAbsent(skill.skill(), s -> new int[2]);
                counts[0] += below(skill) ? 1 : 0;
                counts[1] += skill.latest() == null ? 0 : 1;
            }
        }
        bySkill.forEach((skill, counts) -> add(dips, skill, counts[0], counts[1], share));
        return dips;
    }

    private static void add(
            List<ClassDip> dips, @Nullable String skill, int hits, int of, double share) {
        if (hits >= FEWEST_CHILDREN && hits > share * of) {
            dips.add(new ClassDip(skill, hits, of));
        }
    }

    private static boolean towardHelp(Suggestion suggestion) {
        return suggestion.suggested().ordinal() < suggestion.current().ordinal();
    }

    private static boolean below(Suggestion.SkillSight skill) {
        return skill.latest() == DayStep.Reading.BELOW;
    }

    /** The suggestion with the dips that this child is part of. */
    static Suggestion told(Suggestion one, List<ClassDip> dips) {
        List<Note> notes = new ArrayList<>(one.notes());
        TreeSet<String> below = new TreeSet<>();
        one.skills().stream().filter(Dips::below).forEach(s -> below.add(s.skill()));
        for (ClassDip dip : dips) {
            boolean part = dip.skill() == null ? towardHelp(one) : below.contains(dip.skill());
            if (part) {
                notes.add(new Note.ClassDip(dip.skill(), dip.children(), dip.of()));
            }
        }
        return one.with(notes, one.cautions());
    }
}
