package org.stepwell.core.tier;

import java.util.List;
import org.stepwell.core.evidence.DayStep;

/** What the last evidence days of one skill say against a step. Days are counted, not looks. */
public enum DaySignal {
    /** Nearly all days reach the step. */
    MEETS,
    /** Nearly all days fall short of it. */
    BELOW,
    /** Neither. */
    MIXED,
    /** Objects were out on so many days that neither can be told. */
    HIDDEN,
    /** Too few days. */
    TOO_FEW;

    /**
     * How days become a signal.
     *
     * @param days how many of the last days are looked at
     * @param meets at so many of them or more that reach the step it is {@link #MEETS}
     * @param below at so many or fewer it is {@link #BELOW}
     * @param fewest with fewer days than {@code days}, but at least this many, all must agree; with less there is no
     *     signal
     */
    public record Window(int days, int meets, int below, int fewest) {}

    /**
     * The signal of days that reach a step, fall short of it, or hide it.
     *
     * @param readings oldest first
     */
    public static DaySignal of(List<DayStep.Reading> readings, Window window) {
        int n = Math.min(readings.size(), window.days());
        if (n < window.fewest()) {
            return TOO_FEW;
        }
        List<DayStep.Reading> last = readings.subList(readings.size() - n, readings.size());
        int met = count(last, DayStep.Reading.MEETS);
        int hidden = count(last, DayStep.Reading.HIDDEN);
        boolean all = n == window.days();
        if (met >= (all ? window.meets() : n)) {
            return MEETS;
        }
        if (met + hidden <= (all ? window.below() : 0)) {
            return BELOW;
        }
        return hidden > 0 && met <= window.below() ? HIDDEN : MIXED;
    }

    private static int count(List<DayStep.Reading> readings, DayStep.Reading wanted) {
        return (int) readings.stream().filter(r -> r == wanted).count();
    }
}
