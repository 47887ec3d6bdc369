package org.stepwell.privacy;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;

/**
 * What a family asked of the records on their child, and what became of it: 34 CFR 99.10 (to see them), 99.20 (to have
 * them amended), 99.21 (hearing, and statement when it is refused), 99.22 (how the hearing is held, which is the school's).
 *
 * @param requestId its id
 * @param kind what was asked
 * @param askedOn day the family asked
 * @param words what should read otherwise, and how
 * @param by who wrote it down
 * @param steps what happened, in order
 */
public record FamilyRequest(UUID requestId, Kind kind, LocalDate askedOn, String words, String by, List<Step> steps) {
    /** Copies the list. */
    public FamilyRequest {
        steps = List.copyOf(steps);
    }

    /** What was asked. */
    public enum Kind {
        /** To see the records. */
        INSPECT,
        /** To have something amended. */
        AMEND;

        /** Its word in the store. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What happened. */
    public enum Happened {
        /** The family saw the records. */
        INSPECTED,
        /** It was amended as asked; the words say what. */
        AMENDED,
        /** It was refused; the words say why. The family may ask for a hearing. */
        REFUSED,
        /** The family asked for a hearing. */
        HEARING_ASKED,
        /** The hearing found for the family. */
        HEARING_AMENDED,
        /** The hearing found against the amendment. */
        HEARING_REFUSED,
        /** The family's own words, which go wherever the record goes. */
        STATEMENT,
        /** The family took the request back. */
        WITHDRAWN;

        /** Its word in the store. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** Whether words belong to it. */
        public boolean needsWords() {
            return this != INSPECTED && this != HEARING_ASKED && this != WITHDRAWN;
        }
    }

    /**
     * One thing that happened.
     *
     * @param kind what
     * @param on day
     * @param words reason or statement
     * @param by who wrote it down
     */
    public record Step(Happened kind, LocalDate on, String words, String by) {}

    /** Whether an answer is still owed, which holds everything on the child. */
    public boolean open() {
        return steps.isEmpty() || steps.getLast().kind() == Happened.HEARING_ASKED;
    }

    /** What may happen next. */
    public Set<Happened> next() {
        if (steps.isEmpty()) {
            return kind == Kind.INSPECT ? EnumSet.of(Happened.INSPECTED, Happened.WITHDRAWN)
                    : EnumSet.of(Happened.AMENDED, Happened.REFUSED, Happened.WITHDRAWN);
        }
        boolean heard = steps.stream().anyMatch(step -> step.kind() == Happened.HEARING_ASKED);
        return switch (steps.getLast().kind()) {
            case REFUSED -> EnumSet.of(Happened.HEARING_ASKED, Happened.STATEMENT);
            case HEARING_ASKED -> EnumSet.of(Happened.HEARING_AMENDED, Happened.HEARING_REFUSED, Happened.WITHDRAWN);
            case HEARING_REFUSED -> EnumSet.of(Happened.STATEMENT);
            case STATEMENT -> heard ? EnumSet.of(Happened.STATEMENT)
                    : EnumSet.of(Happened.HEARING_ASKED, Happened.STATEMENT);
            case INSPECTED, AMENDED, HEARING_AMENDED, WITHDRAWN -> EnumSet.noneOf(Happened.class);
        };
    }

    /** Statements of the family, in order. */
    public List<Step> statements() {
        return steps.stream().filter(step -> step.kind() == Happened.STATEMENT).toList();
    }
}
