package org.stepwell.records;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/**
 * What a school keeps for a time of its own choice after a child has left. Every {@link RecordKind} belongs to one of
 * them, and no row of one leans on a row of another but on {@link #CHILD}, so each can go alone.
 */
public enum RetentionKind {
    /** Looks, checks, tasks, choices of lessons, what adults noticed beside. */
    LOOKS(RecordKind.LOOKS, RecordKind.WAITING_LOOKS, RecordKind.CONCERNS, RecordKind.DOSES, RecordKind.CHECK_MARKS,
            RecordKind.CHECK_SITTINGS, RecordKind.CHECK_LOOKS, RecordKind.LESSON_CHOICES, RecordKind.TABLE_TASKS,
            RecordKind.BLOCK_ABSENCES),
    /** Decisions, reviews and their seals, groups and wishes. */
    DECISIONS(RecordKind.DECISIONS, RecordKind.REVIEW_CHOICES, RecordKind.GROUPS, RecordKind.WISHES),
    /** Plans with their sessions, and the letters that tell of them. */
    PLANS(RecordKind.PLANS, RecordKind.PLAN_PHASES, RecordKind.PLAN_SESSIONS, RecordKind.PLAN_ENDS,
            RecordKind.HELP_LETTERS),
    /** Notes home and talks with the family. */
    FAMILY(RecordKind.NOTES_HOME, RecordKind.FAMILY_TALKS, RecordKind.FAMILY_TALK_STEPS, RecordKind.CONFERENCE_TIMES,
            RecordKind.CONFERENCE_ARRIVALS),
    /** With whom the child was shared, and what adults wrote to each other. */
    SHARING(RecordKind.COMMENTS, RecordKind.SHARINGS),
    /**
     * The child itself: name, classes, requests of the family, the key to the record of access, and whatever is left.
     * Never before the other kinds.
     */
    CHILD(RecordKind.CHILD, RecordKind.ENROLMENTS, RecordKind.FAMILY_REQUESTS, RecordKind.FAMILY_REQUEST_STEPS,
            RecordKind.ACCESS);

    private final Set<RecordKind> records;

    RetentionKind(RecordKind first, RecordKind... more) {
        this.records = EnumSet.of(first, more);
    }

    /** What belongs to it; of a child whose period is over, everything. */
    Set<RecordKind> records() {
        return this == CHILD ? EnumSet.allOf(RecordKind.class) : records;
    }

    /** What belongs to it and to no other. */
    Set<RecordKind> own() {
        return records;
    }

    /** Its word in the store and in texts of screens. */
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    static RetentionKind of(String code) {
        return Arrays.stream(values()).filter(kind -> kind.code().equals(code)).findFirst().orElseThrow();
    }
}
