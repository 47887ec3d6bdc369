package org.stepwell.core.pacing;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.stepwell.core.problem.Refused;

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
                throw new Refused("calendar.order", to, from);
            }
        }
    }

    /**
     * Weekdays in a row that are all school days or all inside a break; weekends between them do not count.
     *
     * @param school whether they are school days
     * @param days how many, at least 1
     */
    public record Run(boolean school, int days) {}

    private final List<Break> breaks;
    /** First and last epoch day of each break, in order and without overlap. */
    private final long[][] closed;

    /** @param breaks in any order; may overlap */
    public SchoolCalendar(Collection<Break> breaks) {
        this.breaks = List.copyOf(breaks);
        this.closed = merged(breaks);
    }

    /** The breaks, as given and as inferred. */
    public List<Break> breaks() {
        return breaks;
    }

    /** Whether children are at school on this day. */
    public boolean isSchoolDay(LocalDate day) {
        if (day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY) {
            return false;
        }
        long at = day.toEpochDay();
        for (long[] span : closed) {
            if (at >= span[0] && at <= span[1]) {
                return false;
            }
        }
        return true;
    }

    /** School days after {@code from} up to and including {@code to}; 0 when {@code to} is not after {@code from}. */
    public int schoolDaysBetween(LocalDate from, LocalDate to) {
        return runs(from, to).stream().filter(Run::school).mapToInt(Run::days).sum();
    }

    /** Weekdays inside breaks after {@code from} up to and including {@code to}. */
    public int breakDaysBetween(LocalDate from, LocalDate to) {
        return runs(from, to).stream().filter(r -> !r.school()).mapToInt(Run::days).sum();
    }

    /**
     * The weekdays after {@code from} up to and including {@code to} in order, as runs of school days and of days
     * inside breaks. The cost grows with the number of breaks, not with the number of days.
     */
    public List<Run> runs(LocalDate from, LocalDate to) {
        List<Run> runs = new ArrayList<>();
        long at = from.toEpochDay();
        long end = to.toEpochDay();
        for (long[] span : closed) {
            if (span[1] > at && span[0] <= end) {
                add(runs, true, weekdays(at, span[0] - 1));
                add(runs, false, weekdays(Math.max(at, span[0] - 1), Math.min(end, span[1])));
                at = Math.max(at, span[1]);
            }
        }
        add(runs, true, weekdays(at, end));
        return runs;
    }

    private static void add(List<Run> runs, boolean school, int days) {
        if (days <= 0) {
            return;
        }
        Run last = runs.isEmpty() ? null : runs.getLast();
        if (last != null && last.school() == school) {
            runs.set(runs.size() - 1, new Run(school, last.days() + days));
        } else {
            runs.add(new Run(school, days));
        }
    }

    /** Mondays to Fridays after epoch day {@code from} up to and including {@code to}. */
    private static int weekdays(long from, long to) {
        return to <= from ? 0 : (int) (weekdaysUpTo(to) - weekdaysUpTo(from));
    }

    private static long weekdaysUpTo(long epochDay) {
        long sinceMonday = epochDay + 3; // 29 December 1969 was a Monday
        return 5 * Math.floorDiv(sinceMonday, 7L) + Math.min(Math.floorMod(sinceMonday, 7L) + 1, 5);
    }

    private static long[][] merged(Collection<Break> breaks) {
        List<Break> sorted = breaks.stream().sorted(Comparator.comparing(Break::from)).toList();
        List<long[]> spans = new ArrayList<>();
        for (Break one : sorted) {
            long from = one.from().toEpochDay();
            long to = one.to().toEpochDay();
            if (!spans.isEmpty() && from <= spans.getLast()[1] + 1) {
                spans.getLast()[1] = Math.max(spans.getLast()[1], to);
            } else {
                spans.add(new long[] {from, to});
            }
        }
        return spans.toArray(long[][]::new);
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

    /** The day that lies the given number of school days after {@code day}; gives up after ten years of breaks. */
    public LocalDate plusSchoolDays(LocalDate day, int schoolDays) {
        LocalDate at = day;
        LocalDate limit = day.plusYears(10);
        for (int left = schoolDays; left > 0 && at.isBefore(limit); ) {
            at = at.plusDays(1);
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
