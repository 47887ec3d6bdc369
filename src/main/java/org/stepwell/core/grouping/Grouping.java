package org.stepwell.core.grouping;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Who sits in which group.
 *
 * @param groupOf number of the group, from 1, by child. Numbers tell nothing about the children: where no place is
 *     fixed, group 1 holds the first id, group 2 the first id not in group 1, and so on
 * @param price sum of {@link Aim#price} over all pairs that sit together
 * @param proven whether every other way was ruled out; else a better one may exist
 */
public record Grouping(SortedMap<String, Integer> groupOf, long price, boolean proven) {
    /** Copies the map. */
    public Grouping {
        groupOf = Collections.unmodifiableSortedMap(new TreeMap<>(groupOf));
    }
}
