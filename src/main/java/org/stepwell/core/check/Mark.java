package org.stepwell.core.check;

import java.util.Locale;

/** What stands in a cell of a unit check. An item that was not reached is unknown, not wrong. */
public enum Mark {
    /** Right. */
    RIGHT(1),
    /** Wrong. */
    WRONG(0),
    /** Half right. */
    HALF(0.5),
    /** The child did not come to it. */
    NOT_REACHED(Double.NaN),
    /** Taken back: as if never marked. */
    CLEARED(Double.NaN);

    private final double value;

    Mark(double value) {
        this.value = value;
    }

    /** 1, 0 or 0.5; {@link Double#NaN} where nothing is known. */
    public double value() {
        return value;
    }

    /** The word kept in the store and sent over HTTP, such as {@code not_reached}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Reads a code.
     *
     * @throws IllegalArgumentException naming the word and those accepted
     */
    public static Mark of(String code) {
        for (Mark mark : values()) {
            if (mark.code().equals(code)) {
                return mark;
            }
        }
        throw new IllegalArgumentException(
                "mark \"" + code + "\" is not one of right, wrong, half, not_reached, cleared");
    }
}
