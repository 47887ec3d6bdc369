package org.stepwell.core.tier;

/** The support a child gets now in one unit. Never a property of a child, never on anything that goes home. */
public enum Tier {
    /** Needs the idea again, in a small group, now. */
    SUPPORT("support"),
    /** Goes on with the class. */
    ON_LEVEL("on_level"),
    /** Ready for deeper work on the same skills. */
    EXTENSION("extension");

    private final String code;

    Tier(String code) {
        this.code = code;
    }

    /** The word used in files: {@code support}, {@code on_level}, {@code extension}. */
    public String code() {
        return code;
    }

    /**
     * Reads a file's word.
     *
     * @throws IllegalArgumentException naming the word and those accepted
     */
    public static Tier of(String code) {
        for (Tier tier : values()) {
            if (tier.code.equals(code)) {
                return tier;
            }
        }
        throw new IllegalArgumentException("tier \"" + code + "\" is not one of support, on_level, extension");
    }
}
