package org.stepwell.core.check;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.DayStep;

/**
 * A check and what adults saw tell different things about a skill of a child. Neither is the truth; the teacher looks
 * again. A check shows answers, a look shows the way.
 *
 * @param skill code of the skill
 * @param right items right, halves as half
 * @param reached items answered
 * @param meeting of the last evidence days, how many (summed over the items, then shared) met what the items test
 * @param days evidence days that could tell
 */
public record AgainstTable(String skill, double right, int reached, double meeting, int days) {
    private static final int LAST_DAYS = 4;
    private static final int FEWEST_DAYS = 2;

    /** The two shares lie this far apart or further; our own choice. */
    private static final double APART = 0.5;

    /** Whether the check says more than was seen; otherwise less. */
    public boolean checkSaysMore() {
        return right / reached > meeting / days;
    }

    /**
     * Compares one skill of one child.
     *
     * @param items the items of the skill
     * @param marks of the child, by item
     * @param looks valid or not, of the child at the skill, oldest first; items of checks among them are left aside
     * @return empty when they agree, or when either is too little to say
     */
    public static Optional<AgainstTable> of(
            String skill, List<CheckItem> items, Map<String, Mark> marks, List<CountedLook> looks) {
        List<DayStep> days =
                DayStep.of(looks.stream().filter(l -> !l.checkItem()).toList());
        days = days.subList(Math.max(0, days.size() - LAST_DAYS), days.size());
        double right = 0;
        int reached = 0;
        double met = 0;
        int asked = 0;
        int telling = 0;
        for (CheckItem item : items) {
            Mark mark = marks.getOrDefault(item.code(), Mark.CLEARED);
            if (!item.skill().equals(skill) || Double.isNaN(mark.value())) {
                continue;
            }
            right += mark.value();
            reached++;
            int can = 0;
            for (DayStep day : days) {
                DayStep.Reading reading = day.against(item.step());
                met += reading == DayStep.Reading.MEETS ? 1 : 0;
                can += reading == DayStep.Reading.HIDDEN ? 0 : 1;
            }
            asked += can;
            telling = Math.max(telling, can);
        }
        if (reached < SkillResult.FEWEST_ITEMS || telling < FEWEST_DAYS) {
            return Optional.empty();
        }
        double seen = met / asked;
        return Math.abs(right / reached - seen) < APART
                ? Optional.empty()
                : Optional.of(new AgainstTable(skill, right, reached, seen * telling, telling));
    }
}
