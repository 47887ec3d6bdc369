package org.stepwell.core.tier;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.stepwell.core.evidence.ChildPicture;

/**
 * How likely each tier is for what the child can truly do.
 *
 * <p>The definition: a child needs support when fewer than half of the due skills are at the expected step or above; is
 * ready for extension when at least three quarters are at least one step above the expected one, or at step 5; is on
 * level otherwise. With fewer than two due skills everybody is on level.
 *
 * @param support 0-1
 * @param onLevel 0-1
 * @param extension 0-1; the three add up to 1
 */
public record TierChances(double support, double onLevel, double extension) {
    /** Fewer due skills than this, and there are no tiers. */
    public static final int FEWEST_DUE_SKILLS = 2;

    private static final TierChances NO_TIERS = new TierChances(0, 1, 0);
    private static final int TOP_STEP = 5;

    /**
     * The tier that known steps mean.
     *
     * @param steps 1-5 per due skill
     * @param expected the expected step of each, 1-5
     */
    public static Tier meant(int[] steps, int[] expected) {
        int met = 0;
        int beyond = 0;
        for (int i = 0; i < steps.length; i++) {
            met += steps[i] >= expected[i] ? 1 : 0;
            beyond += steps[i] >= Math.min(TOP_STEP, expected[i] + 1) ? 1 : 0;
        }
        return tier(met, beyond, steps.length);
    }

    private static Tier tier(int met, int beyond, int due) {
        if (due < FEWEST_DUE_SKILLS) {
            return Tier.ON_LEVEL;
        }
        if (2 * met < due) {
            return Tier.SUPPORT;
        }
        return 4 * beyond >= 3 * due ? Tier.EXTENSION : Tier.ON_LEVEL;
    }

    /**
     * The chances on what the evidence says: over all branches, weight times the exact distribution of the counts.
     *
     * @param due expected step per due skill; the picture knows every one of them
     */
    public static TierChances of(ChildPicture picture, SortedMap<String, Integer> due) {
        if (due.size() < FEWEST_DUE_SKILLS) {
            return NO_TIERS;
        }
        int[] expected = due.values().stream().mapToInt(Integer::intValue).toArray();
        double[] sums = new double[3];
        for (ChildPicture.Branch branch : picture.branches()) {
            double[] own = of(chances(branch.chances(), due), expected);
            for (int t = 0; t < sums.length; t++) {
                sums[t] += branch.weight() * own[t];
            }
        }
        double all = sums[0] + sums[1] + sums[2];
        return new TierChances(sums[0] / all, sums[1] / all, sums[2] / all);
    }

    private static double[][] chances(Map<String, double[]> all, SortedMap<String, Integer> due) {
        return due.keySet().stream().map(all::get).toArray(double[][]::new);
    }

    /**
     * The chances of support, on level and extension, in this order, for independent skills. Counts of skills at the
     * expected step and of skills beyond it are carried together, skill by skill.
     *
     * @param chances five step chances per due skill
     * @param expected the expected step of each, 1-5
     */
    public static double[] of(double[][] chances, int[] expected) {
        int n = expected.length;
        if (n < FEWEST_DUE_SKILLS) {
            return new double[] {0, 1, 0};
        }
        double[][] counts = new double[n + 1][n + 1];
        counts[0][0] = 1;
        for (int i = 0; i < n; i++) {
            double met = from(chances[i], expected[i]);
            double beyond = from(chances[i], Math.min(TOP_STEP, expected[i] + 1));
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
        double[] sums = new double[3];
        for (int m = 0; m <= n; m++) {
            for (int b = 0; b <= m; b++) {
                sums[tier(m, b, n).ordinal()] += counts[m][b];
            }
        }
        return sums;
    }

    private static double from(double[] chances, int step) {
        double sum = 0;
        for (int s = step - 1; s < chances.length; s++) {
            sum += chances[s];
        }
        return Math.min(1, sum);
    }

    /** The chance of one tier. */
    public double of(Tier tier) {
        return List.of(support, onLevel, extension).get(tier.ordinal());
    }

    /** The most likely tier; of equal ones on level first, then support. */
    public Tier likeliest() {
        if (onLevel >= support && onLevel >= extension) {
            return Tier.ON_LEVEL;
        }
        return support >= extension ? Tier.SUPPORT : Tier.EXTENSION;
    }
}
