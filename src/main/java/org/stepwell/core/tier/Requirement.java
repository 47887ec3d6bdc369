package org.stepwell.core.tier;

/**
 * One condition of a rule file: {@code chance_support at least 0.6 at 2 reviews}.
 *
 * @param part what it is for
 * @param measure what is measured
 * @param comparison how it is compared
 * @param threshold with what
 * @param reviews at how many reviews in a row it must hold, this one included; 1 = now is enough
 * @param line of the rule file, from 1
 */
public record Requirement(
        Part part, Measure measure, Comparison comparison, double threshold, int reviews, int line) {

    /** What a condition is for. */
    public enum Part {
        /** Without it nothing is said at all. */
        ENOUGH,
        /** A rule moves nobody without it. */
        NEEDS,
        /** When it alone is missing, the rule cannot be judged: neither a move nor a stay. */
        JUDGED
    }

    /** How a measure is compared with a threshold. */
    public enum Comparison {
        /** Not below it. */
        AT_LEAST("at least"),
        /** Not above it. */
        AT_MOST("at most"),
        /** Above it. */
        MORE_THAN("more than");

        private final String words;

        Comparison(String words) {
            this.words = words;
        }

        /** The words used in rule files. */
        public String words() {
            return words;
        }

        boolean holds(double measured, double threshold) {
            return switch (this) {
                case AT_LEAST -> measured >= threshold;
                case AT_MOST -> measured <= threshold;
                case MORE_THAN -> measured > threshold;
            };
        }
    }
}
