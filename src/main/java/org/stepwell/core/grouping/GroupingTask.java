package org.stepwell.core.grouping;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Children, how many groups, and what is asked of them.
 *
 * @param children in any order; the answer does not depend on it
 * @param groups how many, 1 to {@value #MOST}; with fewer children than groups some stay empty
 * @param wishes in any order
 * @param aim what makes good company
 * @param turns rotation in which each group, from group 1 on, meets the teacher; empty: group g in rotation g
 * @param secondAdult groups that meet a second adult, counted from 1
 */
public record GroupingTask(List<GroupChild> children, int groups, List<Wish> wishes, Aim aim, List<Integer> turns,
        SortedSet<Integer> secondAdult) {
    /** Most children, and most groups, of one task. */
    public static final int MOST = 100;

    /**
     * Copies and checks.
     *
     * @throws IllegalArgumentException when there are no children, more than {@value #MOST}, one of them twice, or no
     *     groups
     */
    public GroupingTask {
        children = List.copyOf(children);
        wishes = List.copyOf(wishes);
        turns = List.copyOf(turns);
        secondAdult = new TreeSet<>(secondAdult);
        if (groups < 1 || groups > MOST) {
            throw new IllegalArgumentException("groups must be 1 to " + MOST + ", not " + groups);
        }
        if (children.isEmpty() || children.size() > MOST) {
            throw new IllegalArgumentException("1 to " + MOST + " children can be grouped, not " + children.size());
        }
        if (children.stream().map(GroupChild::id).distinct().count() < children.size()) {
            throw new IllegalArgumentException("a child stands twice among those to be grouped");
        }
        if (!turns.isEmpty() && turns.size() != groups) {
            throw new IllegalArgumentException("turns must name one rotation per group, " + groups + ", not "
                    + turns.size());
        }
    }

    /** Groups by focus and step with pairs kept apart or together, and nothing else asked. */
    public static GroupingTask of(List<GroupChild> children, int groups, List<Wish> wishes) {
        return new GroupingTask(children, groups, wishes, Aim.FOCUS, List.of(), new TreeSet<>());
    }

    /** The same task with other wishes. */
    GroupingTask with(List<Wish> others) {
        return new GroupingTask(children, groups, others, aim, turns, secondAdult);
    }

    /** Rotation in which a group, counted from 1, meets the teacher. */
    int turn(int group) {
        return turns.isEmpty() ? group : turns.get(group - 1);
    }

    /** Most children in one group: sizes differ by at most one. */
    public int largest() {
        return (children.size() + groups - 1) / groups;
    }

    /** Fewest children in one group. */
    public int smallest() {
        return children.size() / groups;
    }
}
