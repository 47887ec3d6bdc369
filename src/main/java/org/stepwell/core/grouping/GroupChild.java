package org.stepwell.core.grouping;

import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.Tier;

/**
 * A child to be given a place. What is not known is {@code null} and speaks neither for nor against any company.
 *
 * @param id the school's own id
 * @param tier support the child gets now; {@code null} at the start of the year and before anything is known
 * @param focus code of the skill the child works on next
 * @param estimate step shown on that skill, 0 to 5, decimals allowed; below 1 = nothing shown yet
 * @param lastGroup name of the last group; children with the same name sat together
 * @param stays groupings in a row with mostly the same company, the last one included; 0 when there was none
 */
public record GroupChild(String id, @Nullable Tier tier, @Nullable String focus, @Nullable Double estimate,
        @Nullable String lastGroup, int stays) {
    /** Highest value of an estimate. */
    public static final double HIGHEST = 5;

    /** Holds the ranges. */
    public GroupChild {
        if (estimate != null && !(estimate >= 0 && estimate <= HIGHEST)) {
            throw new IllegalArgumentException("estimate must be 0 to 5, not " + estimate);
        }
        if (stays < 0) {
            throw new IllegalArgumentException("stays must be 0 or more, not " + stays);
        }
    }

    /** Whether the two sat in the same group last time. */
    boolean satWith(GroupChild other) {
        return lastGroup != null && lastGroup.equals(other.lastGroup);
    }
}
