package org.stepwell.core.plan;

import java.time.LocalDate;
import java.util.List;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;

/**
 * How far a goal is shown without help, which says whether help may begin to fade. What fades last is how often: looks with
 * objects, hints or models do not count here at all. No numeric standard is published; common practice, for teachers to
 * overrule.
 *
 * @param looks looks without help at the skill since the phase began
 * @param shown those at the step of the goal or above
 * @param days separate days among those shown
 */
public record Fading(int looks, int shown, int days) {
    /** Separate days that must have shown it. */
    public static final int DAYS = 2;
    private static final int PERCENT = 100;

    /**
     * Counts.
     *
     * @param counted looks of the child at the skill in focus that count
     * @param from first day of the phase
     * @param step step of the goal
     */
    public static Fading of(List<CountedLook> counted, LocalDate from, int step) {
        List<CountedLook> alone = counted.stream().filter(look -> !look.day().isBefore(from)).filter(Fading::withoutHelp)
                .toList();
        List<CountedLook> shown = alone.stream().filter(look -> look.step() >= step).toList();
        return new Fading(alone.size(), shown.size(),
                (int) shown.stream().map(CountedLook::day).distinct().count());
    }

    /** Whether neither objects beyond the task nor a hint nor a model was there. */
    static boolean withoutHelp(CountedLook look) {
        return look.look().help() == Help.NONE;
    }

    /**
     * Whether help may begin to fade.
     *
     * @param share percent of looks that should show it
     */
    public boolean reached(int share) {
        return days >= DAYS && shown * PERCENT >= share * looks;
    }

    /**
     * Sessions a week one step further down: half, rounded up.
     *
     * @return 0 when the next step is to end the plan
     */
    public static int fewer(int perWeek) {
        return perWeek <= 1 ? 0 : (perWeek + 1) / 2;
    }
}
