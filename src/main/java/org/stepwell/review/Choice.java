package org.stepwell.review;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;

/**
 * What an adult chose for a child in a review.
 *
 * @param childId the child
 * @param turn 1 for the first choice on this child; the newest holds
 * @param kind what was chosen
 * @param tier from now on; when deferred, the one in force
 * @param until day to look again; only when deferred
 * @param reason the adult's words; there for another tier and when deferred
 * @param suggested what the rules said then
 * @param verdict what the rules said then
 * @param by name of the adult
 * @param at when
 */
public record Choice(UUID childId, int turn, Kind kind, Tier tier, @Nullable LocalDate until, String reason,
        Tier suggested, Verdict verdict, String by, Instant at) {

    /** Kinds of choices. */
    public enum Kind {
        /** The suggested move is made. */
        ACCEPT,
        /** The tier in force goes on. */
        KEEP,
        /** Another tier than the one in force and the one suggested. */
        OTHER,
        /** Decided on a later day; the tier in force goes on. */
        DEFER,
        /** A call before the suggestion was shown; decides nothing by itself. */
        OWN_CALL;

        /** The word in the store. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }

        static Kind of(String code) {
            return valueOf(code.toUpperCase(Locale.ROOT));
        }
    }

    /** Whether it decides. */
    public boolean decides() {
        return kind != Kind.OWN_CALL;
    }
}
