package org.stepwell.core.trend;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.pacing.Pacing;

/**
 * The share of a unit's due skills that a child showed at the expected step, week by week. A week counts the due skills
 * seen in it, each once by its last day: a skill not seen is missing, not failed, and neither is a day on which objects
 * hid what the child can do.
 */
public final class UnitSeries {
    private UnitSeries() {
    }

    /**
     * One week.
     *
     * @param monday first day of the week
     * @param met due skills shown at the expected step or above
     * @param seen due skills that could be judged, at least 1
     */
    public record Week(LocalDate monday, int met, int seen) {
        /** Share at the expected step, 0 to 1. */
        public double share() {
            return (double) met / seen;
        }
    }

    /**
     * The weeks in which a due skill could be judged, oldest first.
     *
     * @param days evidence days of one child, all skills, in any order
     * @param pacing what is due; a day is read against the step expected on that day
     */
    public static List<Week> of(Collection<DayStep> days, Pacing pacing) {
        record SkillInWeek(String skill, LocalDate monday) {}
        Map<SkillInWeek, DayStep> last = new HashMap<>();
        for (DayStep day : days) {
            Integer expected = pacing.dueOn(day.day()).get(day.skill());
            if (expected != null && day.against(expected) != DayStep.Reading.HIDDEN) {
                last.merge(new SkillInWeek(day.skill(), WeeklyTotals.mondayOf(day.day())), day,
                        (one, other) -> other.day().isAfter(one.day()) ? other : one);
            }
        }
        WeeklyTotals totals = new WeeklyTotals();
        last.values().forEach(day -> {
            int expected = pacing.dueOn(day.day()).getOrDefault(day.skill(), 0);
            totals.add(day.day(), day.against(expected) == DayStep.Reading.MEETS ? 1 : 0);
        });
        return totals.byWeek().stream()
                .map(week -> new Week(week.monday(), Math.toIntExact(week.sum()), week.count())).toList();
    }
}
