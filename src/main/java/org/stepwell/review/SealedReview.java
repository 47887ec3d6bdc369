package org.stepwell.review;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.Tier;

/**
 * A review as it was closed.
 *
 * @param reviewId the review
 * @param week Monday of its week
 * @param on school day it was closed on
 * @param by who closed it
 * @param at when
 * @param intact whether the stored content still has the digest it was sealed with
 * @param children what was decided, by name
 * @param later per child how many looks arrived after closing that belong to the days before it
 */
public record SealedReview(UUID reviewId, LocalDate week, LocalDate on, String by, Instant at, boolean intact,
        List<Line> children, java.util.Map<UUID, Integer> later) {

    /**
     * One child.
     *
     * @param childId the child
     * @param from in force before
     * @param to in force since
     * @param suggested what the rules said
     * @param verdict word of the verdict
     * @param choice word of the choice
     * @param until day to look again; only when deferred
     * @param reason the adult's words
     * @param by who chose
     * @param teller who tells whom; may be empty
     * @param looks valid looks it rested on
     * @param days on how many days
     * @param chance of the suggested tier, 0 to 1
     * @param versions rules and parameters
     * @param lookIds every look at the child that was known then
     */
    public record Line(UUID childId, Tier from, Tier to, Tier suggested, String verdict, String choice,
            @Nullable LocalDate until, String reason, String by, String teller, int looks, int days, double chance,
            String versions, Set<UUID> lookIds) {
        /** Copies the set. */
        public Line {
            lookIds = Set.copyOf(lookIds);
        }
    }

    /** Copies the collections. */
    public SealedReview {
        children = List.copyOf(children);
        later = java.util.Map.copyOf(later);
    }

    /** Whose support changes. */
    public List<Line> changes() {
        return children.stream().filter(line -> line.from() != line.to()).toList();
    }
}
