package org.stepwell.core.trend;

/**
 * A straight line through points by least squares, centered on the mean of x.
 *
 * @param slope change of y per unit of x
 * @param intercept value at x = 0
 * @param n number of points
 */
public record LeastSquares(double slope, double intercept, int n) {
    /**
     * Fits the line.
     *
     * @throws IllegalArgumentException when there are fewer than two points or all have the same x
     */
    public static LeastSquares fit(double[] x, double[] y) {
        if (x.length != y.length || x.length < 2) {
            throw new IllegalArgumentException("a line needs two points or more, of x and y alike: " + x.length
                    + " and " + y.length);
        }
        double meanX = mean(x);
        double meanY = mean(y);
        double sxx = 0;
        double sxy = 0;
        for (int i = 0; i < x.length; i++) {
            sxx += (x[i] - meanX) * (x[i] - meanX);
            sxy += (x[i] - meanX) * (y[i] - meanY);
        }
        if (sxx == 0) {
            throw new IllegalArgumentException("all points have the same x, " + x[0]);
        }
        double slope = sxy / sxx;
        return new LeastSquares(slope, meanY - slope * meanX, x.length);
    }

    static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    /** The line's value at x. */
    public double at(double x) {
        return intercept + slope * x;
    }
}
