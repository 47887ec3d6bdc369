package org.stepwell.core.trend;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;

/**
 * The median of the slopes between all pairs of points, with the interval of Sen (1968, Journal of the American
 * Statistical Association 63, 1379-1389): the slopes counted in from both ends by the spread of Kendall's S, ties in x
 * and y taken into account.
 *
 * @param slope change of y per unit of x
 * @param low lower end of the interval; {@code null} when the points are too few to bound it
 * @param high upper end of it; {@code null} when {@code low} is
 */
public record TheilSen(double slope, @Nullable Double low, @Nullable Double high) {
    private static final double USUAL = 0.95;

    /** With a 95 % interval; {@code null} when no two points differ in x. */
    public static @Nullable TheilSen of(double[] x, double[] y) {
        return of(x, y, USUAL);
    }

    /**
     * The slope and its interval.
     *
     * @param confidence of the interval, between 0 and 1
     * @return {@code null} when no two points differ in x
     */
    public static @Nullable TheilSen of(double[] x, double[] y, double confidence) {
        double[] slopes = slopes(x, y);
        int count = slopes.length;
        if (count == 0) {
            return null;
        }
        double median = count % 2 == 1 ? slopes[count / 2] : (slopes[count / 2 - 1] + slopes[count / 2]) / 2;
        double z = NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - confidence) / 2);
        double reach = z * StrictMath.sqrt(variance(x, y));
        int low = (int) Math.rint((count - reach) / 2) - 1;
        int high = (int) Math.rint((count + reach) / 2);
        return low < 0 || high >= count
                ? new TheilSen(median, null, null)
                : new TheilSen(median, slopes[low], slopes[high]);
    }

    private static double[] slopes(double[] x, double[] y) {
        double[] slopes = new double[Math.multiplyExact(x.length, Math.max(0, x.length - 1)) / 2];
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                if (x[i] != x[j]) {
                    slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
                }
            }
        }
        double[] sorted = Arrays.copyOf(slopes, count);
        Arrays.sort(sorted);
        return sorted;
    }

    /** Rises minus falls over all pairs with different x. */
    static long mannKendallS(double[] x, double[] y) {
        long s = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                s += (long) (Math.signum(x[j] - x[i]) * Math.signum(y[j] - y[i]));
            }
        }
        return s;
    }

    private static double variance(double[] x, double[] y) {
        return (term(x.length) - ties(x) - ties(y)) / 18;
    }

    private static double ties(double[] values) {
        Map<Double, Integer> counts = new TreeMap<>();
        for (double value : values) {
            counts.merge(value + 0.0, 1, Integer::sum);
        }
        return counts.values().stream().mapToDouble(TheilSen::term).sum();
    }

    private static double term(double n) {
        return n * (n - 1) * (2 * n + 5);
    }
}
