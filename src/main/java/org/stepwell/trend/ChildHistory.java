package org.stepwell.trend;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.trend.TrendGoal;

/**
 * What the trends of one child are drawn from.
 *
 * @param titles what to call each skill that was seen, by code
 * @param days evidence days per skill seen, by code
 * @param pacing what is due when
 * @param calendar which days are school days
 * @param today at the school
 * @param phases days on which decisions changed what runs, oldest first
 * @param goals those set for the child; may be empty
 */
public record ChildHistory(
        SortedMap<String, String> titles,
        SortedMap<String, List<DayStep>> days,
        Pacing pacing,
        SchoolCalendar calendar,
        LocalDate today,
        List<TrendChart.Phase> phases,
        List<TrendGoal> goals) {

    /** The skill seen last; empty when none was. */
    public String seenLast() {
        return days.entrySet().stream()
                .max(Comparator.comparing(e -> e.getValue().stream().map(DayStep::day)
                        .max(LocalDate::compareTo).orElse(LocalDate.MIN)))
                .map(Map.Entry::getKey).orElse("");
    }
}
