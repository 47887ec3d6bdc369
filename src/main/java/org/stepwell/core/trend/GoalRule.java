package org.stepwell.core.trend;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Rules that set a series against its goal line. All are shown as what they are, with {@link #weaknesses()}; none
 * decides. x is in weeks. The least numbers of points and weeks are those usual in manuals of progress monitoring,
 * recalled and not read.
 */
public enum GoalRule {
    /** The four latest points all on one side. From six points over three weeks. */
    FOUR_POINT(6, 3, Weakness.FALSE_ALARMS, Weakness.CHANCE_RUNS) {
        @Override
        Call call(double[] x, double[] y, GoalLine goal) {
            double[] over = IntStream.range(x.length - RUN, x.length).mapToDouble(i -> y[i] - goal.at(x[i])).toArray();
            if (IntStream.range(0, RUN).allMatch(i -> over[i] < 0)) {
                return Call.BELOW;
            }
            return IntStream.range(0, RUN).allMatch(i -> over[i] > 0) ? Call.ABOVE : Call.NEAR;
        }
    },
    /** The slope by least squares against the slope of the goal. From eight points over four weeks. */
    TREND_LINE(8, 4, Weakness.NO_TOLERANCE, Weakness.MANY_WEEKS) {
        @Override
        Call call(double[] x, double[] y, GoalLine goal) {
            Double slope = Growth.of(x, y).slope();
            return slope == null ? Call.TOO_FEW : against(slope, slope, goal.slope(), Call.NEAR);
        }
    },
    /** The 95 % interval of the slope against the slope of the goal; says so when it cannot tell. From three points. */
    INTERVAL(3, 0, Weakness.LOW_POWER, Weakness.SERIAL_DEPENDENCE) {
        @Override
        Call call(double[] x, double[] y, GoalLine goal) {
            Growth growth = Growth.of(x, y);
            @Nullable Double low = growth.low95();
            @Nullable Double high = growth.high95();
            return low == null || high == null ? Call.TOO_FEW : against(low, high, goal.slope(), Call.CANNOT_TELL);
        }
    };

    private static final int RUN = 4;

    /** What a rule says. */
    public enum Call {
        /** Too few points or weeks for this rule. */
        TOO_FEW,
        /** Growth falls short of the goal: think about changing the help. */
        BELOW,
        /** Neither short nor beyond: go on. */
        NEAR,
        /** The points are compatible with growth on both sides of the goal. */
        CANNOT_TELL,
        /** Growth goes beyond the goal: think about a higher one. */
        ABOVE
    }

    /** What is known to be weak about a rule. The code names the text that tells it. */
    public enum Weakness {
        /** Many children who do respond are called below: Hintze and others 2018, 20 000 simulated series. */
        FALSE_ALARMS,
        /** A child on the goal is called below once in 16 by chance, and more often when it is asked every week. */
        CHANCE_RUNS,
        /** Without a band of tolerance a child exactly on the goal is called below half of the time. */
        NO_TOLERANCE,
        /** Advice is 10 to 12 weekly points before it is used: Van Norman, Christ and Newell 2017. */
        MANY_WEEKS,
        /** With few points it seldom tells anything: that is honest uncertainty (Christ 2006). */
        LOW_POWER,
        /** Points that depend on the ones before make the interval too narrow (Christ 2006). */
        SERIAL_DEPENDENCE;

        /** The name in texts and files, such as {@code chance_runs}. */
        public String code() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    private final int leastPoints;
    private final double leastWeeks;
    private final List<Weakness> weaknesses;

    GoalRule(int leastPoints, double leastWeeks, Weakness... weaknesses) {
        this.leastPoints = leastPoints;
        this.leastWeeks = leastWeeks;
        this.weaknesses = List.of(weaknesses);
    }

    /** What is known to be weak about it; to be shown wherever the rule is. */
    public List<Weakness> weaknesses() {
        return weaknesses;
    }

    /**
     * What the rule says about a series.
     *
     * @param x weeks, in any order
     * @param y as many as x
     */
    public Call judge(double[] x, double[] y, GoalLine goal) {
        if (x.length != y.length) {
            throw new IllegalArgumentException(x.length + " x and " + y.length + " y");
        }
        int[] order = IntStream.range(0, x.length).boxed().sorted(Comparator.comparingDouble(i -> x[i]))
                .mapToInt(Integer::intValue).toArray();
        double[] inOrder = IntStream.of(order).mapToDouble(i -> x[i]).toArray();
        if (x.length < leastPoints || inOrder[x.length - 1] - inOrder[0] < leastWeeks) {
            return Call.TOO_FEW;
        }
        return call(inOrder, IntStream.of(order).mapToDouble(i -> y[i]).toArray(), goal);
    }

    abstract Call call(double[] x, double[] y, GoalLine goal);

    private static Call against(double low, double high, double needed, Call between) {
        if (high < needed) {
            return Call.BELOW;
        }
        return low > needed ? Call.ABOVE : between;
    }
}
