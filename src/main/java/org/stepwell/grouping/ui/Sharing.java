package org.stepwell.grouping.ui;

import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/** Who sits where on a board, while it is being changed by hand. */
final class Sharing {
    private final int groups;
    private final SortedMap<String, Integer> groupOf;
    private final SortedSet<String> pinned = new TreeSet<>();
    private final SortedSet<Integer> secondAdult = new TreeSet<>();

    /** @param groupOf group of each child; those outside 1 to {@code groups} go to the smallest group */
    Sharing(int groups, Map<String, Integer> groupOf) {
        this.groups = groups;
        this.groupOf = new TreeMap<>(groupOf);
        this.groupOf.replaceAll((child, group) -> group >= 1 && group <= groups ? group : 0);
        this.groupOf.keySet().stream().filter(c -> this.groupOf.get(c) == 0).toList()
                .forEach(c -> this.groupOf.put(c, smallest()));
    }

    private int smallest() {
        int best = 1;
        for (int g = 2; g <= groups; g++) {
            best = size(g) < size(best) ? g : best;
        }
        return best;
    }

    int size(int group) {
        return java.util.Collections.frequency(groupOf.values(), group);
    }

    int groups() {
        return groups;
    }

    SortedMap<String, Integer> groupOf() {
        return groupOf;
    }

    SortedSet<String> pinned() {
        return pinned;
    }

    SortedSet<Integer> secondAdult() {
        return secondAdult;
    }

    /** Places of the pinned children. */
    Map<String, Integer> pins() {
        Map<String, Integer> pins = new TreeMap<>();
        pinned.forEach(child -> pins.put(child, groupOf.get(child)));
        return pins;
    }

    void move(String child, int group) {
        groupOf.put(child, group);
    }

    void swap(String one, String other) {
        int place = groupOf.get(one);
        groupOf.put(one, groupOf.get(other));
        groupOf.put(other, place);
    }

    /** Pins or lets go. */
    void pin(String child) {
        if (!pinned.remove(child)) {
            pinned.add(child);
        }
    }

    void secondAdult(int group) {
        if (!secondAdult.remove(group)) {
            secondAdult.add(group);
        }
    }
}
