package org.stepwell.core.tier;

/** What must be kept in mind beside a suggestion. The order is that of importance where nothing else decides. */
public enum Caution {
    /** Waiting for more data is no reason to delay a referral or an evaluation. */
    WAITING_IS_NO_REASON,
    /** Low growth of the whole class points to the lesson first. */
    LESSON_FIRST,
    /** A unit check by itself moves nobody. */
    ONE_CHECK_MOVES_NOBODY,
    /** Adults may see different things. */
    OBSERVERS_DIFFER,
    /** An unspoken explanation may be a matter of language, motor skill or speech. */
    WAYS_OF_SHOWING,
    /** Absence and arrival: missing is not zero. */
    MISSING_IS_NOT_ZERO,
    /** A suggestion from limited observations; the teacher decides. */
    YOU_DECIDE,
    /** Number of looks, of days and the date of the latest stand beside every step. */
    SEE_THE_COUNTS,
    /** A tier is a current support, not a label. */
    NOT_A_LABEL,
    /** Growth from fewer than eight points is not drawn as certain. */
    FEW_POINTS_NO_SLOPE
}
