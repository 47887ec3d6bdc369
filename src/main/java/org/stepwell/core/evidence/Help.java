package org.stepwell.core.evidence;

import java.util.Locale;
import org.stepwell.core.problem.Refused;

/** The help a child had while it was seen. Own drawing and fingers are {@link #NONE}; a printed picture is {@link #CUBES}. */
public enum Help {
    /** Nothing but the child's own head, hands and pencil. */
    NONE,
    /** Objects beyond the task. Cubes hide what the child can do without them; they do not cap it. */
    CUBES,
    /** An adult's hint or question that leads. */
    PROMPT,
    /** An adult showed the way first. */
    MODELLED;

    /** The word used in files and over HTTP: {@code none}, {@code cubes}, {@code prompt}, {@code modelled}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Reads a file's word.
     *
     * @throws IllegalArgumentException naming the word and those accepted
     */
    public static Help of(String code) {
        for (Help help : values()) {
            if (help.code().equals(code)) {
                return help;
            }
        }
        throw new Refused("look.help", code);
    }
}
