package org.stepwell.core.evidence;

import java.util.Locale;
import org.stepwell.core.problem.Refused;

/** Where a look comes from. Kinds of evidence are counted per unit. */
public enum Kind {
    /** Seen at the teacher table. */
    TABLE,
    /** A short task at the end of a lesson. */
    EXIT_TASK,
    /** An item of a unit check: right or wrong, weighed half. */
    UNIT_CHECK,
    /** Seen by the support specialist. */
    SPECIALIST,
    /** Anything else. */
    OTHER;

    /** The word used in files and over HTTP, such as {@code exit_task}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Reads a file's word.
     *
     * @throws IllegalArgumentException naming the word and those accepted
     */
    public static Kind of(String code) {
        for (Kind kind : values()) {
            if (kind.code().equals(code)) {
                return kind;
            }
        }
        throw new Refused("look.kind", code);
    }
}
