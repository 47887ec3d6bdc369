package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Reading;
import org.stepwell.core.progression.Progression;

/**
 * What would tell most about one child on one skill today: the step between which and the one below the next look
 * without help is least foreseeable, and the numbers in the order to try them.
 *
 * @param step from 2 to 5: the step the question should be able to show
 * @param numbers those the progression offers: the ones never asked of this child first, in its order, then the others,
 *     longest ago first (three different numbers before a move: one number is one trick; common practice, no source);
 *     empty where it offers none
 */
public record AskNow(int step, List<String> numbers) {
    private static final int LOWEST = 2;
    private static final int HIGHEST = 5;

    /** Nothing known: the middle of the five steps halves what is left to find out. */
    private static final int UNKNOWN = 3;

    /** The lowest step that objects beyond the task can not show. */
    private static final int NOTHING_OUT = 4;

    /** Copies the list. */
    public AskNow {
        numbers = List.copyOf(numbers);
    }

    static AskNow of(Progression progression, String skill, Sight now) {
        return new AskNow(step(skill, now), numbers(progression, skill, now));
    }

    private static int step(String skill, Sight now) {
        if (now.looks().stream().noneMatch(l -> l.skill().equals(skill))) {
            return UNKNOWN;
        }
        Reading reading = now.reading();
        int best = LOWEST;
        for (int step = LOWEST + 1; step <= HIGHEST; step++) {
            if (away(reading, skill, step) < away(reading, skill, best) - 1e-12) {
                best = step;
            }
        }
        return Asking.objectsOnEveryDay(skill, now) ? Math.max(NOTHING_OUT, best) : best;
    }

    /** How far the chance of seeing the step or more in one look is from one half, where it would tell most. */
    private static double away(Reading reading, String skill, int step) {
        return Math.abs(Settling.reaches(reading, skill, step) - 0.5);
    }

    private static List<String> numbers(Progression progression, String skill, Sight now) {
        Map<String, Integer> asked = new HashMap<>();
        List<CountedLook> looks = now.looks();
        for (int i = 0; i < looks.size(); i++) {
            String task = looks.get(i).look().task();
            if (task != null && looks.get(i).skill().equals(skill)) {
                asked.put(task, i);
            }
        }
        List<String> numbers = new ArrayList<>(progression.numbers(skill));
        numbers.sort(Comparator.comparingInt(n -> asked.getOrDefault(n, -1)));
        return numbers;
    }
}
