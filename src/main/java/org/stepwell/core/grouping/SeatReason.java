package org.stepwell.core.grouping;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Why a child sits where it sits, as counts: nobody else is in it, so that the words made from it name no other child.
 *
 * @param child the child
 * @param focus skill it works on next; {@code null} when not known
 * @param step whole step it starts from, 0 = nothing shown yet; {@code null} when not known
 * @param others children at the same table
 * @param sameFocus how many of them work on the same skill
 * @param near how many of them are within one step on that skill
 * @param company how much of the company is new
 * @param kept what was asked for this child, and kept
 */
public record SeatReason(String child, @Nullable String focus, @Nullable Integer step, int others, int sameFocus,
        int near, Company company, Set<Kept> kept) {

    /** How the company compares with last time's. */
    public enum Company {
        /** There was no last time for this child, or it sits alone. */
        UNKNOWN,
        /** At least half of those at the table did not sit with the child last time. */
        NEW,
        /** More than half of them did. */
        KNOWN
    }

    /** A kind of wish that was kept. */
    public enum Kept {
        /** Apart from or together with somebody. */
        COMPANY,
        /** In a given group. */
        PLACE,
        /** Away at times, and no turn at the table lost. */
        TIME,
        /** At the second adult's table. */
        SECOND_ADULT
    }

    /**
     * The reasons of all children, in the order of their ids.
     *
     * @param groupOf group of each child of the task
     */
    public static List<SeatReason> of(GroupingTask task, Map<String, Integer> groupOf) {
        Set<Wish> broken = Set.copyOf(GroupScore.of(task, groupOf).broken());
        return task.children().stream().filter(c -> groupOf.containsKey(c.id()))
                .sorted(java.util.Comparator.comparing(GroupChild::id)).map(c -> of(task, groupOf, c, broken))
                .toList();
    }

    private static SeatReason of(GroupingTask task, Map<String, Integer> groupOf, GroupChild child,
            Set<Wish> broken) {
        Integer group = groupOf.get(child.id());
        List<GroupChild> others = new ArrayList<>();
        for (GroupChild other : task.children()) {
            if (!other.id().equals(child.id()) && java.util.Objects.equals(groupOf.get(other.id()), group)) {
                others.add(other);
            }
        }
        int same = 0;
        int near = 0;
        int known = 0;
        for (GroupChild other : others) {
            boolean sameFocus = child.focus() != null && child.focus().equals(other.focus());
            same += sameFocus ? 1 : 0;
            near += sameFocus && child.estimate() != null && other.estimate() != null
                    && StrictMath.abs(child.estimate() - other.estimate()) <= 1 ? 1 : 0;
            known += child.satWith(other) ? 1 : 0;
        }
        Company company = child.lastGroup() == null || others.isEmpty() ? Company.UNKNOWN
                : 2 * known > others.size() ? Company.KNOWN : Company.NEW;
        return new SeatReason(child.id(), child.focus(),
                child.estimate() == null ? null : (int) StrictMath.floor(child.estimate()), others.size(), same, near,
                company, kept(task, child.id(), broken));
    }

    /** Kinds of wishes for the child of which none is broken. */
    private static Set<Kept> kept(GroupingTask task, String child, Set<Wish> broken) {
        Set<Kept> kept = EnumSet.noneOf(Kept.class);
        Set<Kept> missed = EnumSet.noneOf(Kept.class);
        for (Wish wish : task.wishes()) {
            if (wish.children().contains(child)) {
                (broken.contains(wish) ? missed : kept).add(switch (wish) {
                    case Wish.Apart w -> Kept.COMPANY;
                    case Wish.Together w -> Kept.COMPANY;
                    case Wish.InGroup w -> Kept.PLACE;
                    case Wish.AwayAt w -> Kept.TIME;
                    case Wish.WithSecondAdult w -> Kept.SECOND_ADULT;
                });
            }
        }
        kept.removeAll(missed);
        return kept;
    }
}
