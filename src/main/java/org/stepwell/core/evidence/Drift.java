package org.stepwell.core.evidence;

/**
 * How chances over ordered steps change from one day to the next: from each step up to the next one, or down to the
 * one before, never further. The powers for many days are made once, so that a gap costs the same however long.
 */
final class Drift {
    private static final int LONGEST = 256;

    private final double[][][] powers;

    /**
     * @param up chance per day to go up from each step but the last, 0-1
     * @param down chance per day to go down from each step but the first, 0-1; {@code down[i]} leaves step i + 2
     */
    Drift(double[] up, double[] down) {
        int steps = up.length + 1;
        double[][] day = new double[steps][steps];
        for (int s = 0; s < steps; s++) {
            double rise = s < steps - 1 ? up[s] : 0;
            double fall = s > 0 ? down[s - 1] : 0;
            if (s < steps - 1) {
                day[s][s + 1] = rise;
            }
            if (s > 0) {
                day[s][s - 1] = fall;
            }
            day[s][s] = 1 - rise - fall;
        }
        powers = new double[LONGEST][][];
        powers[0] = identity(steps);
        for (int n = 1; n < LONGEST; n++) {
            powers[n] = product(powers[n - 1], day);
        }
    }

    /** The chances after so many days. */
    double[] after(double[] chances, int days) {
        double[] now = chances;
        for (int left = days; left > 0; left -= LONGEST - 1) {
            now = times(now, powers[Math.min(left, LONGEST - 1)]);
        }
        return now;
    }

    private static double[] times(double[] chances, double[][] matrix) {
        double[] result = new double[chances.length];
        for (int to = 0; to < result.length; to++) {
            double sum = 0;
            for (int from = 0; from < chances.length; from++) {
                sum += chances[from] * matrix[from][to];
            }
            result[to] = sum;
        }
        return result;
    }

    private static double[][] identity(int steps) {
        double[][] one = new double[steps][steps];
        for (int s = 0; s < steps; s++) {
            one[s][s] = 1;
        }
        return one;
    }

    private static double[][] product(double[][] left, double[][] right) {
        double[][] result = new double[left.length][];
        for (int row = 0; row < left.length; row++) {
            result[row] = times(left[row], right);
        }
        return result;
    }
}
