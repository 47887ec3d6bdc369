package org.stepwell.core.pacing;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which days are school days: Monday to Friday, less the days of the given breaks. Immutable.
 *
 * <p>Where nobody wrote the breaks down, a school week in which nobody of the class was seen is taken as one
 * ({@link #withInferredBreaks}).
 */
public final class SchoolCalendar {

    /**
     * Days without school, both ends included.
     *
     * @throws IllegalArgumentException when {@code to} is before {@code from}
     */
    public record Break(LocalDate from, LocalDate to, String reason) {
        /** Checks the order. */
        public Break {
            if (to.isBefore(from)) {
                throw new IllegalArgumentException("a break cannot end on " + to + ", before it begins on " + from);
            }
        }
    }

    private final List<Break> breaks;

    /** @param breaks in any order; may overlap */
    public SchoolCalendar(Collection<Break> breaks) {
        this.breaks = List.copyOf(breaks);
    }

    /** The breaks, as given and as inferred. */
    public List<Break> breaks() {
        return breaks;
    }

    /** Whether children are at school on this day. */
    public boolean isSchoolDay(LocalDate day) {
        DayOfWeek weekday = day.getDayOfWeek();
        return weekday != DayOfWeek.SATURDAY
                && weekday != DayOfWeek.SUNDAY
                && breaks.stream().noneMatch(b -> !day.isBefore(b.from()) && !day.isAfter(b.to()));
    }

    /** School days after {@code from} up to and including {@code to}; 0 when {@code to} is not after {@code from}. */
    public int schoolDaysBetween(LocalDate from, LocalDate to) {
        int count = 0;
        for (LocalDate day = from.plusDays(1); !day.isAfter(to); day = day.plusDays(1)) {
            if (isSchoolDay(day)) {
                count++;
            }
        }
        return count;
    }

    /** Weekdays inside breaks after {@code from} up to and including {@code to}. */
    public int breakDaysBetween(LocalDate from, LocalDate to) {
        int count = 0;
        for (LocalDate day = from.plusDays(1); !day.isAfter(to); day = day.plusDays(1)) {
            boolean weekend = day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
            if (!weekend && !isSchoolDay(day)) {
                count++;
            }
        }
        return count;
    }

    /** The day that lies the given number of school days before {@code day}; gives up after ten years of breaks. */
    public LocalDate minusSchoolDays(LocalDate day, int schoolDays) {
        LocalDate at = day;
        LocalDate limit = day.minusYears(10);
        for (int left = schoolDays; left > 0 && at.isAfter(limit); ) {
            at = at.minusDays(1);
            if (isSchoolDay(at)) {
                left--;
            }
        }
        return at;
    }

    /**
     * Adds a break for each whole school week, after the first seen day and before the last one, in which nobody of
     * the class was seen. Only the past is used: pass the days known by the day of the question.
     *
     * @param seenDays days on which anybody of the class was seen
     * @param upTo weeks that end after this day are left alone
     */
    public SchoolCalendar withInferredBreaks(Collection<LocalDate> seenDays, LocalDate upTo) {
        Set<LocalDate> mondays = new TreeSet<>();
        seenDays.stream().filter(d -> !d.isAfter(upTo)).forEach(d -> mondays.add(d.with(DayOfWeek.MONDAY)));
        if (mondays.isEmpty()) {
            return this;
        }
        List<Break> all = new ArrayList<>(breaks);
        LocalDate first = ((TreeSet<LocalDate>) mondays).first();
        for (LocalDate monday = first; !monday.plusDays(4).isAfter(upTo); monday = monday.plusWeeks(1)) {
            LocalDate friday = monday.plusDays(4);
            boolean anySchool = monday.datesUntil(friday.plusDays(1)).anyMatch(this::isSchoolDay);
            if (anySchool && !mondays.contains(monday)) {
                all.add(new Break(monday, friday, "nobody of the class was seen"));
            }
        }
        return new SchoolCalendar(all);
    }
}
