package org.stepwell.trend;

import java.time.LocalDate;
import java.util.List;
import org.stepwell.core.check.Share;
import org.stepwell.core.trend.ExpectedStep;
import org.stepwell.core.trend.GoalLine;
import org.stepwell.core.trend.Growth;
import org.stepwell.core.trend.LineStyle;
import org.stepwell.core.trend.Trend;
import org.stepwell.core.trend.Trend.Point;
import org.stepwell.core.trend.Trend.Scale;
import org.stepwell.core.wording.Language;

/**
 * A series of weeks as an accessible drawing that prints in black and white: points, a line through them that is dashed
 * below eight weeks and missing below three with the fan of its 95 % interval, hatched weeks where nobody looked, the
 * expected step, the goal with an axis of its own, and a lettered line down the chart where a decision changed what
 * runs.
 */
public final class TrendChart {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 300;
    private static final int LEFT = 74;
    private static final int TOP = 34;
    private static final int BOTTOM = 40;
    private static final int RIGHT = 18;
    private static final int GOAL_RIGHT = 62;
    private static final int EDGE = 14;

    private final TrendWording texts;

    /**
     * A day on which a decision changed what runs.
     *
     * @param day of the decision
     * @param words what has run from then on
     */
    public record Phase(LocalDate day, String words) {}

    /** A drawing that speaks this language. */
    public TrendChart(Language language) {
        this.texts = new TrendWording(language);
    }

    /** The letter of a phase line: a, b, c, as many as a chart can bear. */
    public static String letter(int index) {
        return String.valueOf((char) ('a' + index % 26));
    }

    /**
     * The drawing as SVG markup; holds no name and no text from people.
     *
     * @param id unique on the page, letters only
     * @param expected steps expected over the weeks; empty for a series of shares
     * @param phases within the weeks drawn are marked, in the order given
     */
    public String svg(String id, String title, Trend trend, List<ExpectedStep> expected, List<Phase> phases) {
        return new Drawing(id, trend).whole(title, expected, phases);
    }

    private final class Drawing {
        private final String id;
        private final Trend trend;
        private final SvgPen pen = new SvgPen();
        private final double lastWeek;
        private final int right;

        private Drawing(String id, Trend trend) {
            this.id = id;
            this.trend = trend;
            double now = Math.max(trend.week(trend.today().plusDays(1)),
                    trend.points().isEmpty() ? 0 : trend.at(trend.points().getLast()));
            this.lastWeek = Math.max(1, trend.goalLine().map(g -> Math.max(now, g.toX())).orElse(now));
            this.right = trend.goal() == null ? RIGHT : GOAL_RIGHT;
        }

        private String whole(String title, List<ExpectedStep> expected, List<Phase> phases) {
            pen.raw("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart\" viewBox=\"0 0 " + WIDTH + " " + HEIGHT
                    + "\" role=\"img\" aria-labelledby=\"" + id + "-title " + id + "-desc\"><title id=\"" + id
                    + "-title\">" + SvgPen.escaped(title) + "</title><desc id=\"" + id + "-desc\">"
                    + SvgPen.escaped((texts.finding(title, trend) + " " + texts.gaps(trend)).strip()) + "</desc>"
                    + "<defs><pattern id=\"" + id + "-hatch\" width=\"8\" height=\"8\" patternUnits=\"userSpaceOnUse\""
                    + " patternTransform=\"rotate(45)\"><line x1=\"0\" y1=\"0\" x2=\"0\" y2=\"8\""
                    + " stroke=\"currentColor\" stroke-opacity=\"0.35\" stroke-width=\"1.5\"/></pattern>"
                    + "<clipPath id=\"" + id + "-plot\"><rect x=\"" + LEFT + "\" y=\"" + TOP + "\" width=\""
                    + (WIDTH - LEFT - right) + "\" height=\"" + (HEIGHT - TOP - BOTTOM) + "\"/></clipPath></defs>");
            axes();
            gaps();
            if (!trend.points().isEmpty()) {
                expected.forEach(this::expected);
                line();
                points();
            }
            trend.goalLine().ifPresent(this::goal);
            phases(phases);
            return pen.raw("</svg>").toString();
        }

        private void axes() {
            boolean steps = trend.scale() == Scale.STEP;
            String[] names = steps
                    ? new String[] {"1", "2", "3", "4", "5"}
                    : new String[] {texts.say("axis.none"), texts.say("axis.half"), texts.say("axis.all")};
            for (int i = 0; i < names.length; i++) {
                double value = trend.scale().least()
                        + i * (trend.scale().most() - trend.scale().least()) / (names.length - 1);
                pen.line(LEFT, y(value), WIDTH - right, y(value), "stroke-opacity=\"0.2\"");
                pen.text(LEFT - 8, y(value) + 5, "end", names[i]);
            }
            pen.text(LEFT, HEIGHT - 10, "start", texts.day(trend.firstMonday()));
            LocalDate end = trend.goal() != null && trend.goal().by().isAfter(trend.today())
                    ? trend.goal().by()
                    : trend.today();
            pen.text(WIDTH - right, HEIGHT - 10, "end", texts.day(end));
        }

        private void gaps() {
            for (Trend.Gap gap : trend.gaps()) {
                double week = trend.week(gap.monday());
                double from = x(week);
                pen.area(from, TOP, x(Math.min(week + 1, lastWeek)) - from, HEIGHT - TOP - BOTTOM,
                        "url(#" + id + "-hatch)", gap.noSchool() ? "closed" : "unseen");
            }
        }

        private void expected(ExpectedStep span) {
            double from = Math.max(LEFT, x(trend.week(span.from())));
            pen.line(from, y(span.step()), x(trend.week(span.to())), y(span.step()),
                    "stroke-width=\"2\" stroke-dasharray=\"2 5\"");
            pen.text(from + 4, y(span.step()) - 7, "start", texts.say("expected", span.step()));
        }

        /** The line and the fan of the slopes that fit as well, through the middle of the points. */
        private void line() {
            Growth growth = trend.growth();
            if (trend.style() == LineStyle.NONE || growth == null || growth.slope() == null
                    || growth.intercept() == null) {
                return;
            }
            double first = trend.at(trend.points().getFirst());
            double last = trend.at(trend.points().getLast());
            double slope = growth.slope();
            double intercept = growth.intercept() - slope * first;
            pen.raw("<g clip-path=\"url(#" + id + "-plot)\">");
            if (growth.low95() != null && growth.high95() != null) {
                double middle = trend.points().stream().mapToDouble(trend::at).average().orElse(0);
                double there = intercept + slope * middle;
                double low = growth.low95();
                double high = growth.high95();
                pen.shape("fill-opacity=\"0.1\"", x(first), y(there + low * (first - middle)), x(middle), y(there),
                        x(last), y(there + low * (last - middle)), x(last), y(there + high * (last - middle)),
                        x(middle), y(there), x(first), y(there + high * (first - middle)));
            }
            pen.line(x(first), y(intercept + slope * first), x(last), y(intercept + slope * last),
                    "class=\"fit\" stroke-width=\"2.5\""
                            + (trend.style() == LineStyle.DASHED ? " stroke-dasharray=\"9 6\"" : ""));
            pen.raw("</g>");
        }

        /** Weeks that follow each other are joined by a hairline; it breaks where nobody looked. */
        private void points() {
            Point before = null;
            for (Point point : trend.points()) {
                double at = x(trend.at(point));
                Share share = point.share();
                Double low = share == null ? null : share.low95();
                Double high = share == null ? null : share.high95();
                if (low != null && high != null) {
                    pen.line(at, y(low), at, y(high), "class=\"whisker\" stroke-opacity=\"0.6\"");
                }
                if (before != null && before.monday().plusWeeks(1).equals(point.monday())) {
                    pen.line(x(trend.at(before)), y(before.value()), at, y(point.value()),
                            "class=\"join\" stroke-opacity=\"0.5\"");
                }
                pen.dot(at, y(point.value()));
                before = point;
            }
        }

        private void goal(GoalLine goal) {
            int axis = WIDTH - right + 6;
            pen.raw("<g clip-path=\"url(#" + id + "-plot)\">");
            pen.line(x(goal.fromX()), y(goal.fromY()), x(goal.toX()), y(goal.toY()),
                    "class=\"goal\" stroke-width=\"2\" stroke-dasharray=\"14 4 3 4\"");
            pen.raw("</g>");
            pen.line(axis, y(goal.fromY()), axis, y(goal.toY()), "class=\"goal-axis\" stroke-width=\"2\"");
            for (double value : new double[] {goal.fromY(), goal.toY()}) {
                pen.line(axis, y(value), axis + 5, y(value), "stroke-width=\"2\"");
                pen.text(axis + 8, y(value) + 5, "start",
                        texts.number(trend.scale() == Scale.STEP ? value : 10 * value));
            }
            pen.text(WIDTH - 4, TOP - 16, "end", texts.say("goal.axis"));
        }

        private void phases(List<Phase> phases) {
            for (int i = 0; i < phases.size(); i++) {
                double week = trend.week(phases.get(i).day());
                if (week >= 0 && week <= lastWeek) {
                    pen.line(x(week), TOP - 8, x(week), HEIGHT - BOTTOM, "class=\"phase\" stroke-width=\"1.5\"");
                    pen.text(x(week), TOP - 14, "middle", letter(i));
                }
            }
        }

        private double x(double week) {
            return LEFT + EDGE + week / lastWeek * (WIDTH - LEFT - right - 2 * EDGE);
        }

        private double y(double value) {
            double share = (value - trend.scale().least()) / (trend.scale().most() - trend.scale().least());
            return HEIGHT - BOTTOM - 8 - share * (HEIGHT - TOP - BOTTOM - 16);
        }
    }
}
