package org.stepwell.core.tier;

import java.util.Locale;

/** What the rules say about the tier in force. */
public enum Verdict {
    /** Another tier fits better, clearly enough. */
    MOVE,
    /** The tier in force goes on. */
    STAY,
    /** There is too little evidence to say anything; help that runs goes on. */
    NOT_ENOUGH;

    /** The word used in files: {@code move}, {@code stay}, {@code not_enough}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
