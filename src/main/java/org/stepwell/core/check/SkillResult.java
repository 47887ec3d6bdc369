package org.stepwell.core.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a child answered to the items of one skill. A check of few items says little: below three reached items nothing
 * is said at all (common practice, no source), and the interval stands beside every share.
 *
 * @param skill code of the skill
 * @param right items right
 * @param halves items half right
 * @param reached items with an answer, right, half or wrong
 * @param items items of the skill that were asked
 */
public record SkillResult(String skill, int right, int halves, int reached, int items) {
    /** Fewest answered items for a statement about a skill. */
    public static final int FEWEST_ITEMS = 3;

    /** From this share on the skill is taken as shown: 80 %, common practice, no source. */
    private static final double SHOWN = 0.8;

    /** Up to this share it is asked again: half, our own choice. */
    private static final double AGAIN = 0.5;

    /** What may be said about the skill from the check alone. */
    public enum Says {
        /** Fewer than three items answered: nothing. */
        TOO_FEW,
        /** Four of five right, or more. */
        SHOWN,
        /** More than half. */
        PARTLY,
        /** Half or less. */
        AGAIN
    }

    /** Right items out of the reached ones; a half is not a right one. */
    public Share share() {
        return new Share(right, reached);
    }

    /** What may be said; halves count half. */
    public Says says() {
        if (reached < FEWEST_ITEMS) {
            return Says.TOO_FEW;
        }
        double share = (right + 0.5 * halves) / reached;
        return share >= SHOWN ? Says.SHOWN : share > AGAIN ? Says.PARTLY : Says.AGAIN;
    }

    /**
     * The results of one child, by skill in the order of the items.
     *
     * @param marks by code of the item; an item without one was not marked
     */
    public static List<SkillResult> of(List<CheckItem> items, Map<String, Mark> marks) {
        Map<String, int[]> counts = new LinkedHashMap<>();
        for (CheckItem item : items) {
            int[] count = counts.computeIfAbsent(item.skill(), s -> new int[4]);
            Mark mark = marks.getOrDefault(item.code(), Mark.CLEARED);
            count[0] += mark == Mark.RIGHT ? 1 : 0;
            count[1] += mark == Mark.HALF ? 1 : 0;
            count[2] += Double.isNaN(mark.value()) ? 0 : 1;
            count[3]++;
        }
        List<SkillResult> results = new ArrayList<>();
        counts.forEach((skill, c) -> results.add(new SkillResult(skill, c[0], c[1], c[2], c[3])));
        return results;
    }
}
