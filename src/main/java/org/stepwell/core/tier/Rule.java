package org.stepwell.core.tier;

import java.util.List;
import java.util.Set;

/**
 * A move and what it needs.
 *
 * @param id snake_case, unique in its file
 * @param from tiers it moves from
 * @param to tier it moves to
 * @param needs what must hold beside the file's {@code enough} lines, in the order of the file
 */
public record Rule(String id, Set<Tier> from, Tier to, List<Requirement> needs) {
    /** Copies the collections. */
    public Rule {
        from = java.util.Collections.unmodifiableSortedSet(new java.util.TreeSet<>(from));
        needs = List.copyOf(needs);
    }

    /** Whether the move gives more help than the child has now. */
    public boolean givesHelp() {
        return from.stream().allMatch(t -> to.ordinal() < t.ordinal());
    }
}
