package org.stepwell.bench;

import java.util.Arrays;

/**
 * A price that no sharing out of children into groups of one size can go below. Each child gets a share of the price;
 * whatever the shares, all of them together plus, for each group, the least that any set of children of that size
 * costs beyond the shares of its members is such a bound (the dual of choosing sets so that each child is in exactly
 * one). Shares are bettered by iterative scaling at a falling temperature. Any shares give a true bound; rounding up
 * is right because prices are whole.
 */
final class GroupsBound {
    /** Size of the groups. */
    static final int SIZE = 5;
    private static final double[] TEMPERATURES = {32, 16, 8, 4, 2, 1, 0.5};
    private static final double OUT_OF_SIGHT = 30;

    private final int[][] price;
    private final int children;
    private final int groups;
    private final double[] share;
    private final double[] met;
    private double least;
    private double mass;

    private GroupsBound(int[][] price) {
        this.price = price;
        this.children = price.length;
        this.groups = children / SIZE;
        this.share = new double[children];
        this.met = new double[children];
    }

    /**
     * The bound, rounded up.
     *
     * @param price of each pair; their number a multiple of {@value #SIZE}
     * @param rounds of scaling at each temperature
     */
    static long of(int[][] price, int rounds) {
        if (price.length % SIZE != 0) {
            throw new IllegalArgumentException("a multiple of " + SIZE + " children, not " + price.length);
        }
        GroupsBound bound = new GroupsBound(price);
        double best = bound.value();
        for (double temperature : TEMPERATURES) {
            for (int round = 0; round < rounds; round++) {
                bound.scale(temperature);
                best = Math.max(best, bound.value());
            }
        }
        return (long) StrictMath.ceil(best - 1e-6);
    }

    private double value() {
        least = Double.POSITIVE_INFINITY;
        visit((sum, a, b, c, d, e) -> least = Math.min(least, sum));
        return Arrays.stream(share).sum() + groups * least;
    }

    /** Takes share from children met too often among the cheap sets and gives it to those met too seldom. */
    private void scale(double temperature) {
        Arrays.fill(met, 0);
        mass = 0;
        double lowest = least;
        double far = lowest + OUT_OF_SIGHT * temperature;
        visit((sum, a, b, c, d, e) -> {
            if (sum < far) {
                double weight = StrictMath.exp((lowest - sum) / temperature);
                mass += weight;
                met[a] += weight;
                met[b] += weight;
                met[c] += weight;
                met[d] += weight;
                met[e] += weight;
            }
        });
        for (int i = 0; i < children; i++) {
            double often = Math.max(met[i] / mass * groups, 1e-6);
            share[i] -= temperature / SIZE * 2 * StrictMath.log(often);
        }
    }

    private interface Visitor {
        void set(double sum, int a, int b, int c, int d, int e);
    }

    private void visit(Visitor visitor) {
        for (int a = 0; a < children; a++) {
            for (int b = a + 1; b < children; b++) {
                double ab = price[a][b] - share[a] - share[b];
                for (int c = b + 1; c < children; c++) {
                    double abc = ab + price[a][c] + price[b][c] - share[c];
                    for (int d = c + 1; d < children; d++) {
                        double abcd = abc + price[a][d] + price[b][d] + price[c][d] - share[d];
                        for (int e = d + 1; e < children; e++) {
                            visitor.set(abcd + price[a][e] + price[b][e] + price[c][e] + price[d][e] - share[e],
                                    a, b, c, d, e);
                        }
                    }
                }
            }
        }
    }
}
