package org.stepwell.core.trend;

/** How a line through points may be drawn, so that nothing looks surer than it is. Common practice, no source. */
public enum LineStyle {
    /** Below three points: no line. */
    NONE,
    /** Below eight points: dashed. */
    DASHED,
    /** From eight points on. */
    SOLID;

    private static final int LINE_FROM = 3;
    private static final int SURE_FROM = 8;

    /** The style for a number of points. */
    public static LineStyle of(int points) {
        if (points < LINE_FROM) {
            return NONE;
        }
        return points < SURE_FROM ? DASHED : SOLID;
    }
}
