package org.stepwell.core.trend;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
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
        Map<LocalDate, List<DayStep>> byWeek = days.stream().collect(Collectors.groupingBy(
                d -> d.day().with(DayOfWeek.MONDAY), TreeMap::new, Collectors.toList()));
        return byWeek.entrySet().stream().map(week -> new Week(week.getKey(),
                week.getValue().stream().mapToInt(DayStep::step).average().orElseThrow(),
                week.getValue().size())).toList();
    }
}
