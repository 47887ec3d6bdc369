package org.stepwell.core.rotation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.stepwell.core.rotation.MinutesLedger.Line;

/** In which order groups meet the teacher today, and why. The order is our own rule; common practice, no source. */
public final class TeacherOrder {
    private TeacherOrder() {}

    /** Why a group stands where it does. */
    public enum Why {
        /** Minutes that were planned were not held. */
        OWED,
        /** Without today it would miss a visit of those wished for this week, fewer than one a day. */
        LAST_CHANCE,
        /** As it comes: fewest minutes first, and the beginning goes round from day to day. */
        IN_TURN,
        /** It had the visits wished for this week. */
        HAD_ITS_VISITS
    }

    /**
     * What is known of a group.
     *
     * @param number from 1
     * @param wished visits in a week
     * @param had visits this week before today
     * @param owed minutes owed, mean of its children
     * @param minutes minutes had in the weeks looked at, mean of its children
     */
    public record Group(int number, int wished, int had, double owed, double minutes) {
        /** A group from the lines of its children. */
        public static Group of(int number, int wished, int had, Collection<String> children,
                Map<String, Line> ledger) {
            return new Group(number, wished, had, mean(children, ledger, true), mean(children, ledger, false));
        }

        private static double mean(Collection<String> children, Map<String, Line> ledger, boolean owed) {
            return children.stream().filter(ledger::containsKey).map(ledger::get)
                    .mapToInt(line -> owed ? line.owed() : line.given()).average().orElse(0);
        }
    }

    /** A group in its place. */
    public record Place(int group, Why why) {}

    /**
     * The order: first who would else miss a visit of the week, then who is owed most, then who had fewest minutes for
     * the visits wished; last who had its visits. Where all is equal the beginning goes round, so that no group is
     * always the one that is cut short.
     *
     * @param groups each once
     * @param daysLeft days with a block left this week, today included, at least 1
     * @param days days with a block in a week
     * @param day a number that grows by one from block to block
     */
    public static List<Place> of(List<Group> groups, int daysLeft, int days, int day) {
        List<Place> places = new ArrayList<>();
        IntStream.range(0, groups.size()).boxed().sorted(Comparator
                .comparing((Integer i) -> left(groups.get(i)) <= 0 ? 2 : left(groups.get(i)) >= daysLeft ? 0 : 1)
                .thenComparing(i -> -Math.max(0, Math.round(groups.get(i).owed())))
                .thenComparing(i -> groups.get(i).minutes() / groups.get(i).wished())
                .thenComparing(i -> Math.floorMod(i - day, groups.size())))
                .forEach(i -> places.add(new Place(groups.get(i).number(), why(groups.get(i), daysLeft, days))));
        return places;
    }

    private static int left(Group group) {
        return group.wished() - group.had();
    }

    private static Why why(Group group, int daysLeft, int days) {
        if (left(group) <= 0) {
            return Why.HAD_ITS_VISITS;
        }
        if (Math.round(group.owed()) > 0) {
            return Why.OWED;
        }
        return left(group) >= daysLeft && group.wished() < days ? Why.LAST_CHANCE : Why.IN_TURN;
    }
}
