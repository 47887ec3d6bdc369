package org.stepwell.core.check;

import org.apache.commons.statistics.interval.BinomialConfidenceInterval;
import org.apache.commons.statistics.interval.Interval;
import org.jspecify.annotations.Nullable;

/**
 * How many of how many, with what so few can say about the share behind it: the interval of Wilson (1927, Journal of
 * the American Statistical Association 22, 209-212).
 *
 * @param hits those of whom it is true, 0 to {@code of}
 * @param of all of them
 */
public record Share(int hits, int of) {
    private static final double ERROR_RATE = 0.05;

    /** Holds that the part is no larger than the whole. */
    public Share {
        if (hits < 0 || hits > of) {
            throw new IllegalArgumentException(hits + " of " + of + " is no share");
        }
    }

    /** The share, 0 to 1; {@code null} of none. */
    public @Nullable Double value() {
        return of == 0 ? null : (Double) ((double) hits / of);
    }

    /** Lower end of the 95 % interval; {@code null} of none. */
    public @Nullable Double low95() {
        return of == 0 ? null : (Double) interval().getLowerBound();
    }

    /** Upper end of the 95 % interval; {@code null} of none. */
    public @Nullable Double high95() {
        return of == 0 ? null : (Double) interval().getUpperBound();
    }

    private Interval interval() {
        return BinomialConfidenceInterval.WILSON_SCORE.fromErrorRate(of, hits, ERROR_RATE);
    }
}
