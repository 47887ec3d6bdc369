package org.stepwell.core.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.tier.ChildState.Dose;

/**
 * Sessions planned and given up to a day. Planned are the school days of each phase times its sessions a week over five,
 * added up and rounded down, so that a part of a week never counts against the adults. Common practice, no source.
 */
public final class PlannedSessions {
    private static final double DAYS_A_WEEK = 5.0;

    /**
     * What holds from a day on.
     *
     * @param from first day
     * @param perWeek sessions a school week
     */
    public record Phase(LocalDate from, int perWeek) {}

    /** What became of a session. */
    public enum Outcome {
        /** It was given. */
        GIVEN,
        /** Missed because the child was away. */
        CHILD_ABSENT,
        /** Missed because the adult was away or busy. */
        ADULT_UNAVAILABLE,
        /** Missed because of an event of the school. */
        SCHOOL_EVENT;

        /** Whether the school, not the child, is why it was missed. */
        public boolean missedBySchool() {
            return this == ADULT_UNAVAILABLE || this == SCHOOL_EVENT;
        }

        /** The word in the store. */
        public String code() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }

        /**
         * Reads the store's word.
         *
         * @throws IllegalArgumentException when it is none of them
         */
        public static Outcome of(String code) {
            return valueOf(code.toUpperCase(java.util.Locale.ROOT));
        }
    }

    /**
     * One session.
     *
     * @param on school day
     * @param outcome what became of it
     */
    public record Session(LocalDate on, Outcome outcome) {}

    private PlannedSessions() {
    }

    /**
     * Sessions planned up to the end of a day.
     *
     * @param phases in any order; of two on one day the later in the list holds
     * @param end last day of the plan; {@code null} while it runs
     */
    public static int planned(List<Phase> phases, @Nullable LocalDate end, SchoolCalendar calendar, LocalDate day) {
        List<Phase> ordered = new ArrayList<>(phases);
        ordered.sort(Comparator.comparing(Phase::from));
        LocalDate last = end != null && end.isBefore(day) ? end : day;
        double sum = 0;
        for (int i = 0; i < ordered.size(); i++) {
            Phase phase = ordered.get(i);
            LocalDate until = i + 1 < ordered.size() && !ordered.get(i + 1).from().isAfter(last)
                    ? ordered.get(i + 1).from().minusDays(1) : last;
            sum += calendar.schoolDaysBetween(phase.from().minusDays(1), until) * phase.perWeek() / DAYS_A_WEEK;
        }
        return (int) Math.floor(sum + 1e-9);
    }

    /**
     * Given against planned.
     *
     * @return {@code null} when nothing was to be given yet
     */
    public static @Nullable Dose dose(List<Phase> phases, @Nullable LocalDate end, List<Session> sessions,
            SchoolCalendar calendar, LocalDate day) {
        int planned = planned(phases, end, calendar, day);
        List<Session> known = sessions.stream().filter(s -> !s.on().isAfter(day)).toList();
        int given = (int) known.stream().filter(s -> s.outcome() == Outcome.GIVEN).count();
        int school = (int) known.stream().filter(s -> s.outcome().missedBySchool()).count();
        int child = (int) known.stream().filter(s -> s.outcome() == Outcome.CHILD_ABSENT).count();
        return planned < 1 ? null : new Dose(planned, given, school, child);
    }

    /** Whether the two newest sessions were both missed by the school: time to mend the schedule. */
    public static boolean missedTwiceRunning(List<Session> sessions) {
        List<Session> ordered = new ArrayList<>(sessions);
        ordered.sort(Comparator.comparing(Session::on));
        int size = ordered.size();
        return size >= 2 && ordered.get(size - 1).outcome().missedBySchool()
                && ordered.get(size - 2).outcome().missedBySchool();
    }

    /** Days on which to look again after help ended: two and four weeks on (common practice; Longino et al. 2021). */
    public static List<LocalDate> maintenance(LocalDate end) {
        return List.of(end.plusWeeks(2), end.plusWeeks(4));
    }
}
