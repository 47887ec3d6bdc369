package org.stepwell.core.wording;

/** A language in which the program speaks. */
public enum Language {
    /** English, as used in US schools. */
    ENGLISH("en"),
    /** Spanish, as used in US schools; wants a native reader before it is relied on. */
    SPANISH("es");

    private final String code;

    Language(String code) {
        this.code = code;
    }

    /** The code used in files and addresses: {@code en}, {@code es}. */
    public String code() {
        return code;
    }

    /**
     * Reads a code.
     *
     * @throws IllegalArgumentException naming the code and those accepted
     */
    public static Language of(String code) {
        for (Language language : values()) {
            if (language.code.equals(code)) {
                return language;
            }
        }
        throw new IllegalArgumentException("language \"" + code + "\" is not one of en, es");
    }

    Phrasebook phrases() {
        return this == ENGLISH ? new EnglishPhrases() : new SpanishPhrases();
    }
}
