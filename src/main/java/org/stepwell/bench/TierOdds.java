package org.stepwell.bench;

import org.stepwell.core.tier.Tier;

/** The definition of the three tiers, for known steps and for chances. */
final class TierOdds {
    private TierOdds() {}

    /** The tier that true steps mean; both arrays hold the due skills only. */
    static Tier of(int[] steps, int[] expected) {
        int met = 0;
        int beyond = 0;
        for (int i = 0; i < steps.length; i++) {
            met += steps[i] >= expected[i] ? 1 : 0;
            beyond += steps[i] >= Math.min(5, expected[i] + 1) ? 1 : 0;
        }
        if (steps.length < 2) {
            return Tier.ON_LEVEL;
        }
        if (2 * met < steps.length) {
            return Tier.SUPPORT;
        }
        return 4 * beyond >= 3 * steps.length ? Tier.EXTENSION : Tier.ON_LEVEL;
    }

    /**
     * Chances of support, on-level and extension when skills are independent.
     *
     * @param chances five step chances per due skill
     * @param expected the expected step of each
     */
    static double[] of(double[][] chances, int[] expected) {
        int n = expected.length;
        if (n < 2) {
            return new double[] {0, 1, 0};
        }
        double[][] counts = new double[n + 1][n + 1];
        counts[0][0] = 1;
        for (int i = 0; i < n; i++) {
            double met = from(chances[i], expected[i]);
            double beyond = from(chances[i], Math.min(5, expected[i] + 1));
            double[][] next = new double[n + 1][n + 1];
            for (int m = 0; m <= i; m++) {
                for (int b = 0; b <= m; b++) {
                    next[m][b] += counts[m][b] * (1 - met);
                    next[m + 1][b] += counts[m][b] * (met - beyond);
                    next[m + 1][b + 1] += counts[m][b] * beyond;
                }
            }
            counts = next;
        }
        double[] odds = new double[3];
        for (int m = 0; m <= n; m++) {
            for (int b = 0; b <= m; b++) {
                odds[2 * m < n ? 0 : 4 * b >= 3 * n ? 2 : 1] += counts[m][b];
            }
        }
        return odds;
    }

    private static double from(double[] chances, int step) {
        double sum = 0;
        for (int s = step - 1; s < chances.length; s++) {
            sum += chances[s];
        }
        return Math.min(1, sum);
    }
}
