package org.stepwell.core.wording;

import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Measure;

/** How numbers are written in sentences: shares and chances as counts of ten, counts as they are. */
final class Figures {
    private static final double MOST_DECIMALS = 1e6;
    private static final double SMALLEST = 0.1;

    private Figures() {}

    /** Up to one decimal, none when it is 0; a dot in every language. */
    static String plain(double value) {
        return written(rounded(value, 10));
    }

    /** Of ten, as a whole number of 0 to 10. */
    static int ofTen(double share) {
        return (int) StrictMath.rint(share * 10);
    }

    /** A number with the word for one or for many. */
    static String count(int n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }

    /**
     * What was measured, with as many decimals as it takes to stand on the same side of what was required as it does:
     * 4.97 of 10 is not written as 5 where 5 was required and missed. A chance is never written as none or all.
     */
    static String measured(Condition condition, String ofTen, String under, String over) {
        double factor = condition.required().measure().share() ? 10 : 1;
        double value = condition.measured() == null ? 0 : condition.measured() * factor;
        double required = condition.required().threshold() * factor;
        double scale = 10;
        if (chance(condition.required().measure()) && value > 0 && value < SMALLEST / 2) {
            return under + written(SMALLEST) + ofTen;
        }
        if (chance(condition.required().measure()) && value < factor && value >= factor - SMALLEST / 2) {
            return over + written(factor - SMALLEST) + ofTen;
        }
        double rounded = rounded(value, scale);
        while (Double.compare(rounded, required) != Double.compare(value, required) && scale < MOST_DECIMALS) {
            scale *= 10;
            rounded = rounded(value, scale);
        }
        return written(rounded) + (factor == 1 ? "" : ofTen);
    }

    private static boolean chance(Measure measure) {
        return measure.name().startsWith("CHANCE_");
    }

    private static double rounded(double value, double scale) {
        return StrictMath.rint(value * scale) / scale;
    }

    private static String written(double rounded) {
        return rounded == StrictMath.rint(rounded) ? String.valueOf((long) rounded) : String.valueOf(rounded);
    }

    static String of(Measure measure, double value, String ofTen) {
        return measure.share() ? written(rounded(value * 10, 1000)) + ofTen : plain(value);
    }
}
