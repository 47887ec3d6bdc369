package org.stepwell.core.trend;

import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * Growth of one series, by least squares with its uncertainty and by measures that one odd point cannot bend. What is
 * not defined is {@code null}: every slope when all points have the same x, errors and intervals of least squares below
 * three points, the interval of Theil-Sen when so few points cannot bound it.
 *
 * @param n number of points
 * @param slope least squares, change of y per unit of x
 * @param intercept least squares, value at x = 0
 * @param seSlope standard error of the slope
 * @param low95 lower end of the 95 % interval of the slope, by Student's t with n - 2 degrees of freedom
 * @param high95 upper end of it
 * @param theilSen slope and 95 % interval of Theil-Sen
 * @param mannKendallS number of rises minus number of falls over all pairs with different x
 */
public record Growth(
        int n,
        @Nullable Double slope,
        @Nullable Double intercept,
        @Nullable Double seSlope,
        @Nullable Double low95,
        @Nullable Double high95,
        @Nullable TheilSen theilSen,
        long mannKendallS) {

    private static final double TAIL = 0.025;
    /** A slope this small beside the size of y is what rounding leaves of a flat series. */
    private static final double ROUNDING = 1e-12;

    /**
     * Measures a series.
     *
     * @param x time, in any unit and order
     * @param y what grows; as many as x
     * @throws IllegalArgumentException when there are not as many y as x
     */
    public static Growth of(double[] x, double[] y) {
        if (x.length != y.length) {
            throw new IllegalArgumentException(x.length + " x and " + y.length + " y");
        }
        TheilSen robust = TheilSen.of(x, y);
        long s = TheilSen.mannKendallS(x, y);
        if (robust == null) {
            return new Growth(x.length, null, null, null, null, null, null, s);
        }
        double slope = slope(x, y);
        double meanX = LeastSquares.mean(x);
        double meanY = LeastSquares.mean(y);
        double intercept = meanY - slope * meanX;
        if (x.length < 3) {
            return new Growth(x.length, slope, intercept, null, null, null, robust, s);
        }
        double sxx = 0;
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            double dx = x[i] - meanX;
            double rest = y[i] - meanY - slope * dx;
            sxx += dx * dx;
            squares += rest * rest;
        }
        double error = StrictMath.sqrt(squares / (x.length - 2) / sxx);
        double reach = error * TDistribution.of(x.length - 2).inverseSurvivalProbability(TAIL);
        return new Growth(x.length, slope, intercept, error, slope - reach, slope + reach, robust, s);
    }

    private static double slope(double[] x, double[] y) {
        double slope = LeastSquares.fit(x, y).slope();
        double across = 0;
        double size = 0;
        for (int i = 0; i < x.length; i++) {
            across = Math.max(across, Math.abs(x[i] - x[0]));
            size = Math.max(size, Math.abs(y[i]));
        }
        return Math.abs(slope) * across <= ROUNDING * size ? 0 : slope;
    }
}
