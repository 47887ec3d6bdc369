package org.stepwell.core.grouping;

import java.util.List;

/** The answer to a task: groups that keep every wish, or why there are none. */
public sealed interface Proposal {
    /** Groups that keep every wish. */
    record Groups(Grouping grouping) implements Proposal {}

    /** Why there are none; at least one reason. */
    record Impossible(List<Contradiction> contradictions) implements Proposal {}
}
