package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.SortedMap;
import org.stepwell.core.evidence.EvidenceFilter;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;

/**
 * What holds for every child of the class on one day.
 *
 * @param due expected step per due skill
 * @param windowFrom first day of the window of the rule file
 * @param unitFrom first day from which kinds of evidence are counted: that of the unit, or of the window when earlier
 */
record DayContext(
        LocalDate day,
        SchoolCalendar calendar,
        Pacing pacing,
        SortedMap<String, Integer> due,
        LocalDate windowFrom,
        LocalDate unitFrom,
        EvidenceFilter filter,
        RuleSettings settings) {

    static DayContext of(
            LocalDate day, SchoolCalendar calendar, Pacing pacing, EvidenceFilter filter, RuleSettings settings) {
        int back = settings.windowDays() - (calendar.isSchoolDay(day) ? 1 : 0);
        LocalDate windowFrom = calendar.minusSchoolDays(day, back);
        LocalDate unitFrom = pacing.unitStart(day, calendar)
                .filter(d -> d.isBefore(windowFrom))
                .orElse(windowFrom);
        return new DayContext(day, calendar, pacing, pacing.dueOn(day), windowFrom, unitFrom, filter, settings);
    }

    /** The same class on a later day, with nothing known of the days between but that they are as the calendar says. */
    DayContext on(LocalDate later) {
        return of(later, calendar, pacing, filter, settings);
    }
}
