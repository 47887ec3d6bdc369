package org.stepwell.core.wording;

import org.stepwell.core.tier.Measure;

/** How numbers are written in sentences: shares and chances as counts of ten, counts as they are. */
final class Figures {
    private Figures() {}

    /** Up to one decimal, none when it is 0; a dot in every language. */
    static String plain(double value) {
        double rounded = StrictMath.rint(value * 10) / 10;
        return rounded == StrictMath.rint(rounded) ? String.valueOf((long) rounded) : String.valueOf(rounded);
    }

    /** Of ten, as a whole number of 0 to 10. */
    static int ofTen(double share) {
        return (int) StrictMath.rint(share * 10);
    }

    static String of(Measure measure, double value, String ofTen) {
        return measure.share() ? plain(value * 10) + ofTen : plain(value);
    }
}
