package org.stepwell.core.trend;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.check.Share;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;

/**
 * One series of weeks with all that may be said about it. Time is counted in weeks from {@link #firstMonday}; the growth
 * counts whole weeks.
 *
 * @param scale what the values are
 * @param points the weeks with evidence, oldest first
 * @param gaps the whole school weeks without, from the first point up to {@code today}, oldest first
 * @param today the day on which it is told
 * @param growth of the points; {@code null} when there is none
 * @param goal in weeks; {@code null} where none was set
 */
public record Trend(
        Scale scale,
        List<Point> points,
        List<Gap> gaps,
        LocalDate today,
        @Nullable Growth growth,
        @Nullable TrendGoal goal) {

    private static final double MIDWEEK = 2 / 7.0;

    /** What the values of a series are. */
    public enum Scale {
        /** Weekly mean of the day steps of one skill, 1 to 5. */
        STEP(1, 5),
        /** Share of the due skills at the expected step, 0 to 1. */
        SHARE(0, 1);

        private final double least;
        private final double most;

        Scale(double least, double most) {
            this.least = least;
            this.most = most;
        }

        /** The lowest value there is. */
        public double least() {
            return least;
        }

        /** The highest value there is. */
        public double most() {
            return most;
        }
    }

    /**
     * A week with evidence.
     *
     * @param monday first day of the week
     * @param value on the scale of the series
     * @param days how many days a mean of steps rests on; 0 for a share
     * @param share the share it is; {@code null} for a mean of steps
     */
    public record Point(LocalDate monday, double value, int days, @Nullable Share share) {}

    /**
     * A week without evidence: missing, not zero.
     *
     * @param monday first day of the week
     * @param noSchool whether there was no school day in it
     */
    public record Gap(LocalDate monday, boolean noSchool) {}

    /** A rule and what it says. */
    public record Ruled(GoalRule rule, GoalRule.Call call) {}

    /** Copies the lists. */
    public Trend {
        points = List.copyOf(points);
        gaps = List.copyOf(gaps);
    }

    /**
     * The series of one skill.
     *
     * @param days evidence days of one child and skill, in any order
     * @param goals those set for the child; the first about the skill counts
     */
    public static Trend ofSkill(
            String skill, List<DayStep> days, SchoolCalendar calendar, LocalDate today, Collection<TrendGoal> goals) {
        List<Point> points = WeeklySeries.of(days).stream()
                .map(week -> new Point(week.monday(), week.mean(), week.days(), null))
                .toList();
        return of(Scale.STEP, points, calendar, today, goals.stream().filter(g -> skill.equals(g.skill())).findFirst());
    }

    /**
     * The series of the unit.
     *
     * @param days evidence days of one child, all skills, in any order
     * @param goals those set for the child; the first about the unit counts
     */
    public static Trend ofUnit(
            Collection<DayStep> days,
            Pacing pacing,
            SchoolCalendar calendar,
            LocalDate today,
            Collection<TrendGoal> goals) {
        List<Point> points = UnitSeries.of(days, pacing).stream()
                .map(week -> new Point(week.monday(), week.share(), 0, new Share(week.met(), week.seen())))
                .toList();
        return of(Scale.SHARE, points, calendar, today, goals.stream().filter(g -> g.skill() == null).findFirst());
    }

    private static Trend of(
            Scale scale, List<Point> points, SchoolCalendar calendar, LocalDate today, Optional<TrendGoal> goal) {
        Growth growth = points.isEmpty() ? null : Growth.of(weeks(points), values(points));
        return new Trend(scale, points, gaps(points, calendar, today), today, growth, goal.orElse(null));
    }

    private static List<Gap> gaps(List<Point> points, SchoolCalendar calendar, LocalDate today) {
        if (points.isEmpty()) {
            return List.of();
        }
        Map<LocalDate, Point> seen = points.stream()
                .collect(Collectors.toMap(Point::monday, Function.identity(), (a, b) -> a, TreeMap::new));
        List<Gap> gaps = new ArrayList<>();
        LocalDate first = points.getFirst().monday();
        for (LocalDate monday = first; !monday.plusDays(4).isAfter(today); monday = monday.plusWeeks(1)) {
            if (!seen.containsKey(monday)) {
                boolean school = monday.datesUntil(monday.plusDays(5)).anyMatch(calendar::isSchoolDay);
                gaps.add(new Gap(monday, !school));
            }
        }
        return gaps;
    }

    /** Monday of the first week with evidence: week 0. That of today when there is none. */
    public LocalDate firstMonday() {
        return points.isEmpty() ? WeeklyTotals.mondayOf(today) : points.getFirst().monday();
    }

    /** Weeks from week 0 to a day, with fractions; may be negative. */
    public double week(LocalDate day) {
        return ChronoUnit.DAYS.between(firstMonday(), day) / 7.0;
    }

    /** Where a point stands in time: the Wednesday of its week. */
    public double at(Point point) {
        return week(point.monday()) + MIDWEEK;
    }

    /** How the line may be drawn. */
    public LineStyle style() {
        return LineStyle.of(points.size());
    }

    /** The goal as a line in weeks; empty where none was set. */
    public Optional<GoalLine> goalLine() {
        return Optional.ofNullable(goal)
                .map(g -> new GoalLine(week(g.from()), g.start(), week(g.by()), g.target()));
    }

    /**
     * What each rule says about the points since the goal was set; empty where none was. Points before it tell nothing
     * about the help that was meant to lead there.
     */
    public List<Ruled> ruled() {
        return goalLine()
                .map(line -> {
                    List<Point> since = points.stream()
                            .filter(p -> at(p) >= line.fromX())
                            .toList();
                    List<Ruled> all = new ArrayList<>();
                    for (GoalRule rule : GoalRule.values()) {
                        all.add(new Ruled(rule, rule.judge(
                                since.stream().mapToDouble(this::at).toArray(), values(since), line)));
                    }
                    return all;
                })
                .orElse(List.of());
    }

    private static double[] weeks(List<Point> points) {
        LocalDate first = points.getFirst().monday();
        return points.stream()
                .mapToDouble(p -> ChronoUnit.WEEKS.between(first, p.monday()))
                .toArray();
    }

    private static double[] values(List<Point> points) {
        return points.stream().mapToDouble(Point::value).toArray();
    }
}
