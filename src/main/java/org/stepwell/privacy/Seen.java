package org.stepwell.privacy;

import java.util.Locale;

/** What of a child can be asked for and is written down in the record of access. */
public enum Seen {
    /** The child's page. */
    CHILD_PAGE,
    /** The plan of support. */
    PLAN_PAGE,
    /** The page that goes home, on the screen. */
    NOTE_PAGE,
    /** The page that goes home, as a file. */
    NOTE_PRINT,
    /** The letter about extra help, on the screen. */
    LETTER_PAGE,
    /** The letter about extra help, as a file. */
    LETTER_PRINT,
    /** A closed review with the child in it, as a file. */
    REVIEW_PRINT,
    /** Looks as a file or over HTTP. */
    LOOKS_FILE,
    /** The roster as a file. */
    ROSTER_FILE,
    /** Answers of a unit check as a file. */
    CHECK_FILE,
    /** The report to a specialist or a team meeting, as a file. */
    REPORT_PRINT,
    /** The record of access itself as a file. */
    RECORD_FILE,
    /** Everything that is kept on the child, for a parent to inspect. */
    ALL_RECORDS,
    /** The same, to go along to the school a child moves to. */
    TRANSFER;

    /** Its word in the store and in files. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** For whom it is made: {@code family}, {@code school} (another one) or {@code staff}. */
    public String party() {
        return switch (this) {
            case NOTE_PRINT, LETTER_PRINT, ALL_RECORDS -> "family";
            case TRANSFER -> "school";
            default -> "staff";
        };
    }
}
