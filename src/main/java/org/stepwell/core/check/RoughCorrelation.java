package org.stepwell.core.check;

/**
 * How little a correlation of few children says: the 95 % interval by Fisher's transformation (Fisher 1921, Metron 1,
 * 3-32; from memory).
 *
 * @param low lower end, -1 to 1
 * @param high upper end, -1 to 1
 */
public record RoughCorrelation(double low, double high) {
    private static final double Z = 1.959963984540054;

    /**
     * The interval.
     *
     * @param r the correlation, above -1 and below 1
     * @param n children, at least 4
     * @throws IllegalArgumentException when either is outside
     */
    public static RoughCorrelation of(double r, int n) {
        if (n < 4 || !(r > -1 && r < 1)) {
            throw new IllegalArgumentException("a correlation of " + r + " among " + n + " has no interval");
        }
        double at = 0.5 * (StrictMath.log1p(r) - StrictMath.log1p(-r));
        double half = Z / StrictMath.sqrt(n - 3.0);
        return new RoughCorrelation(StrictMath.tanh(at - half), StrictMath.tanh(at + half));
    }
}
