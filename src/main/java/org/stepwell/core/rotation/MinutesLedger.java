package org.stepwell.core.rotation;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** Minutes at the teacher table that children were to have and had. Arithmetic only: it says nothing about a child. */
public final class MinutesLedger {
    private MinutesLedger() {}

    /**
     * A day with a block.
     *
     * @param day which
     * @param planned as it was when it began
     * @param held as it came about
     * @param groupOf group of each child, by the school's own id
     * @param absent children who were not there
     */
    public record Day(LocalDate day, DayPlan planned, DayPlan held, Map<String, Integer> groupOf, Set<String> absent) {}

    /**
     * One child.
     *
     * @param planned minutes planned
     * @param given minutes had
     * @param absent minutes that the group had while the child was away
     */
    public record Line(int planned, int given, int absent) {
        /** Minutes that were planned and not held while the child was there; below zero when there were more. */
        public int owed() {
            return planned - given - absent;
        }

        private Line plus(Line more) {
            return new Line(planned + more.planned, given + more.given, absent + more.absent);
        }
    }

    /** Sums the days by child; a child who was in no group on any of them does not appear. */
    public static SortedMap<String, Line> of(List<Day> days) {
        SortedMap<String, Line> lines = new TreeMap<>();
        for (Day day : days) {
            day.groupOf().forEach((child, group) -> {
                int held = day.held().teacherMinutes(group);
                boolean away = day.absent().contains(child);
                lines.merge(child, new Line(day.planned().teacherMinutes(group), away ? 0 : held, away ? held : 0),
                        Line::plus);
            });
        }
        return lines;
    }
}
