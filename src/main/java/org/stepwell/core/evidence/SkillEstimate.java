package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What the evidence says about one child and one skill on one day.
 *
 * @param skill code of the skill
 * @param chances chance of each of the five steps, index 0 = step 1, adding up to 1; empty when never seen
 * @param looks how many valid looks count
 * @param days on how many different days
 * @param lastSeen day of the newest valid look; {@code null} when never seen
 * @param stale no valid look for longer than the parameters allow, in school days
 */
public record SkillEstimate(
        String skill, List<Double> chances, int looks, int days, @Nullable LocalDate lastSeen, boolean stale) {

    /** Copies the list and checks its length. */
    public SkillEstimate {
        chances = List.copyOf(chances);
        if (!chances.isEmpty() && chances.size() != 5) {
            throw new IllegalArgumentException("chances must be none or five, not " + chances.size());
        }
    }

    /** Whether the child was ever seen on this skill; when not, there is no number at all. */
    public boolean seen() {
        return !chances.isEmpty();
    }

    /**
     * Chance of the given step or above.
     *
     * @param step 1-5
     * @throws IllegalStateException when never seen
     */
    public double atLeast(int step) {
        if (chances.isEmpty()) {
            throw new IllegalStateException("never seen on " + skill + ": no chance to give");
        }
        double sum = 0;
        for (int s = 5; s >= step; s--) {
            sum += chances.get(s - 1);
        }
        return Math.min(1.0, sum);
    }

    /** The highest step whose chance of that step or above is at least one half; 0 when never seen. */
    public int step() {
        for (int s = 5; s >= 2 && seen(); s--) {
            if (atLeast(s) >= 0.5) {
                return s;
            }
        }
        return seen() ? 1 : 0;
    }
}
