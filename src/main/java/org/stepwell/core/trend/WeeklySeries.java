package org.stepwell.core.trend;

import java.time.LocalDate;
import java.util.List;
import org.stepwell.core.evidence.DayStep;

/** The mean of the day steps of each week; a week without a look is a gap, not a zero. */
public final class WeeklySeries {
    private WeeklySeries() {
    }

    /**
     * One week.
     *
     * @param monday first day of the week
     * @param mean mean of the day steps, 1 to 5
     * @param days how many days it rests on
     */
    public record Week(LocalDate monday, double mean, int days) {}

    /** The weeks with at least one day, oldest first. */
    public static List<Week> of(List<DayStep> days) {
        WeeklyTotals totals = new WeeklyTotals();
        days.forEach(day -> totals.add(day.day(), day.step()));
        return totals.byWeek().stream().map(week -> new Week(week.monday(), week.mean(), week.count())).toList();
    }
}
