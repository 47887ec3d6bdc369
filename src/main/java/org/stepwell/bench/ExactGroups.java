package org.stepwell.bench;

import java.util.Arrays;

/**
 * The least price of groups whose sizes differ by at most one, by dynamic programming over all sets of children: slow,
 * exact, and with nothing in common with the search it measures. No wishes.
 */
final class ExactGroups {
    /** Most children; the table has one entry for each set of all but one of them. */
    static final int MOST = 25;
    private static final int OPEN = -1;

    private final int[][] price;
    private final int children;
    private final int smallest;
    private final int largest;
    private final int[] least;

    private ExactGroups(int[][] price, int groups) {
        this.price = price;
        this.children = price.length;
        this.smallest = children / groups;
        this.largest = (children + groups - 1) / groups;
        this.least = new int[1 << (children - 1)];
        Arrays.fill(least, OPEN);
        least[0] = 0;
    }

    /**
     * The least price.
     *
     * @param price of each pair of children at one table, symmetric, 0 or more
     * @param groups how many, at most as many as children
     */
    static int least(int[][] price, int groups) {
        if (price.length > MOST || groups > price.length) {
            throw new IllegalArgumentException("up to " + MOST + " children in no more groups than children, not "
                    + price.length + " in " + groups);
        }
        ExactGroups exact = new ExactGroups(price, groups);
        return exact.withFirst((1 << exact.children) - 1, groups);
    }

    /** Least price of sharing a set out; the child of the lowest number sits in the next group. */
    private int withFirst(int set, int groups) {
        int first = Integer.numberOfTrailingZeros(set);
        int rest = set & (set - 1);
        int best = Integer.MAX_VALUE;
        for (int size = smallest; size <= largest; size++) {
            int left = Integer.bitCount(set) - size;
            if (left >= (groups - 1) * smallest && left <= (groups - 1) * largest) {
                best = Math.min(best, grow(1 << first, rest, set, size - 1, 0, groups));
            }
        }
        return best;
    }

    private int grow(int group, int open, int set, int missing, int paid, int groups) {
        if (missing == 0) {
            int rest = rest(set & ~group, groups - 1);
            return rest == Integer.MAX_VALUE ? rest : paid + rest;
        }
        int best = Integer.MAX_VALUE;
        for (int left = open; Integer.bitCount(left) >= missing; left &= left - 1) {
            int next = Integer.numberOfTrailingZeros(left);
            int more = paid;
            for (int in = group; in != 0; in &= in - 1) {
                more += price[next][Integer.numberOfTrailingZeros(in)];
            }
            best = Math.min(best, grow(group | 1 << next, left & (left - 1), set, missing - 1, more, groups));
        }
        return best;
    }

    /** As {@link #withFirst}, remembered: every set but the first lacks child 0. */
    private int rest(int set, int groups) {
        int key = set >>> 1;
        if (least[key] == OPEN) {
            least[key] = withFirst(set, groups);
        }
        return least[key];
    }
}
