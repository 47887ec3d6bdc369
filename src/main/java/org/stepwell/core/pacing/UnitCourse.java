package org.stepwell.core.pacing;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Where a unit of lessons is heading: due dates that follow the real class, and its end as a range.
 *
 * @param plannedDaysLeft days the lessons still to come are planned to take, that of today left out
 * @param daysTaught days taught in the unit so far
 * @param daysAgain of those, days on which the class stayed at a lesson beyond its plan
 */
public record UnitCourse(int plannedDaysLeft, int daysTaught, int daysAgain) {
    /** Wilson's z for 95 %. */
    private static final double Z = 1.959963984540054;

    /**
     * First and last day on which the unit may well end.
     *
     * @param early when nothing slips any more
     * @param asSoFar when lessons go on slipping as they did
     * @param late when they slip as often as the upper end of Wilson's 95 % interval for the days so far
     */
    public record End(LocalDate early, LocalDate asSoFar, LocalDate late) {}

    /** Projects the end from a day on, which itself is already used up. */
    public End end(LocalDate today, SchoolCalendar calendar) {
        double rate = daysTaught == 0 ? 0 : (double) daysAgain / daysTaught;
        return new End(
                calendar.plusSchoolDays(today, plannedDaysLeft),
                calendar.plusSchoolDays(today, (int) StrictMath.rint(plannedDaysLeft * (1 + rate))),
                calendar.plusSchoolDays(today, (int) StrictMath.ceil(plannedDaysLeft * (1 + upper()))));
    }

    private double upper() {
        if (daysTaught == 0) {
            return 0.5; // nothing is known yet: as if every second day were taught twice
        }
        double n = daysTaught;
        double p = daysAgain / n;
        return (p + Z * Z / (2 * n) + Z * StrictMath.sqrt(p * (1 - p) / n + Z * Z / (4 * n * n))) / (1 + Z * Z / n);
    }

    /**
     * Moves what is still to come by school days. Rows due up to the day hold already and stay; of the later ones the
     * due day moves, and the first day of work when that lies ahead too. Where two rows of a skill come to lie on one
     * day the later one holds.
     *
     * @param rows by skill, oldest due first
     * @param schoolDays how many; below zero moves them nearer, never to the day itself or before it
     */
    public static List<PacingRow> moved(
            List<PacingRow> rows, LocalDate day, int schoolDays, SchoolCalendar calendar) {
        Map<String, PacingRow> moved = new LinkedHashMap<>();
        for (PacingRow row : rows) {
            LocalDate taught = row.taughtFrom();
            PacingRow after = !row.due().isAfter(day)
                    ? row
                    : new PacingRow(
                            row.skill(),
                            taught == null || !taught.isAfter(day) ? taught : by(taught, day, schoolDays, calendar),
                            by(row.due(), day, schoolDays, calendar),
                            row.expectedStep());
            moved.put(after.skill() + " " + after.due(), after);
        }
        return List.copyOf(moved.values());
    }

    private static LocalDate by(LocalDate date, LocalDate day, int schoolDays, SchoolCalendar calendar) {
        if (schoolDays >= 0) {
            return calendar.plusSchoolDays(date, schoolDays);
        }
        LocalDate nearest = calendar.plusSchoolDays(day, 1);
        LocalDate nearer = calendar.minusSchoolDays(date, -schoolDays);
        return nearer.isBefore(nearest) ? nearest : nearer;
    }
}
