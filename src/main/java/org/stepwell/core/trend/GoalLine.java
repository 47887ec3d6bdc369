package org.stepwell.core.trend;

import java.util.Arrays;

/**
 * A straight line from where a child stood to where help is meant to lead. It assumes steady growth, and an error in
 * where it starts bends every judgement against it.
 *
 * @param fromX time of the start, in the unit of the series
 * @param fromY value at the start
 * @param toX time by which the goal is to be reached; after {@code fromX}
 * @param toY the goal
 */
public record GoalLine(double fromX, double fromY, double toX, double toY) {
    private static final int BASELINE = 3;

    /** Holds that the goal lies after the start. */
    public GoalLine {
        if (!(toX > fromX)) {
            throw new IllegalArgumentException("a goal at " + toX + " is not after its start at " + fromX);
        }
    }

    /**
     * A line from the baseline: the median of the first three values, at the median of their times. Common practice,
     * no source.
     *
     * @param x time, oldest first
     * @throws IllegalArgumentException when there are fewer than three points or the goal is not after them
     */
    public static GoalLine fromBaseline(double[] x, double[] y, double toX, double toY) {
        if (x.length != y.length || x.length < BASELINE) {
            throw new IllegalArgumentException("a baseline needs three points or more");
        }
        return new GoalLine(median(x), median(y), toX, toY);
    }

    private static double median(double[] values) {
        double[] first = Arrays.copyOf(values, BASELINE);
        Arrays.sort(first);
        return first[BASELINE / 2];
    }

    /** Growth needed per unit of x. */
    public double slope() {
        return (toY - fromY) / (toX - fromX);
    }

    /** The value expected at x. */
    public double at(double x) {
        return fromY + slope() * (x - fromX);
    }
}
