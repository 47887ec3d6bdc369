package org.stepwell.core.tier;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.progression.Progression;

/** Chooses the one question that would tell most at the table. */
final class Asking {
    private Asking() {}

    static Details.@Nullable Ask of(Progression progression, Sight now) {
        if (now.context().due().isEmpty()) {
            return null;
        }
        String skill = mostTelling(now);
        int expected = now.context().due().get(skill);
        return new Details.Ask(skill, expected, number(progression, skill, now),
                objectsOnEveryDay(skill, now));
    }

    /**
     * The due skill on which one look without objects is least foreseeable: where the chance of seeing the expected
     * step is closest to one half. Of equal ones the first by code; a skill is due.
     */
    static String mostTelling(Sight now) {
        String best = null;
        double closest = Double.POSITIVE_INFINITY;
        for (String skill : now.context().due().keySet()) {
            double away = Math.abs(Settling.reaches(now, skill, now.context().due().get(skill)) - 0.5);
            if (away < closest - 1e-12) {
                closest = away;
                best = skill;
            }
        }
        if (best == null) {
            throw new IllegalStateException("no skill is due on " + now.day());
        }
        return best;
    }

    private static @Nullable String number(Progression progression, String skill, Sight now) {
        Set<String> asked = now.looks().stream()
                .filter(l -> l.skill().equals(skill) && l.look().task() != null)
                .map(l -> l.look().task())
                .collect(Collectors.toSet());
        return progression.numbers(skill).stream().filter(n -> !asked.contains(n)).findFirst().orElse(null);
    }

    /** Whether objects were out on every day counted of a due skill, so that a step above 3 was never asked for. */
    static boolean objectsOnEveryDay(String skill, Sight now) {
        List<DayStep> days = now.daySteps().getOrDefault(skill, List.of());
        return !days.isEmpty() && days.stream().allMatch(DayStep::atLeast);
    }
}
