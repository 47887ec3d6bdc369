package org.stepwell.core.grouping;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Looks for some so many that are all apart from each other, by a bounded number of trials. */
final class ApartClique {
    private static final int MOST_TRIALS = 200_000;

    private final boolean[][] apart;
    private int trials;

    ApartClique(boolean[][] apart) {
        this.apart = apart;
    }

    /** Members of a clique of that size, ascending; empty when there is none, or none was met in time. */
    List<Integer> ofSize(int size) {
        List<Integer> chosen = new ArrayList<>();
        List<Integer> open = IntStream.range(0, apart.length).boxed().toList();
        return grow(chosen, open, size) ? chosen : List.of();
    }

    private boolean grow(List<Integer> chosen, List<Integer> open, int size) {
        if (chosen.size() == size) {
            return true;
        }
        for (int i = 0; i < open.size() && chosen.size() + open.size() - i >= size; i++) {
            if (++trials > MOST_TRIALS) {
                return false;
            }
            int next = open.get(i);
            chosen.add(next);
            if (grow(chosen, open.subList(i + 1, open.size()).stream().filter(o -> apart[next][o]).toList(), size)) {
                return true;
            }
            chosen.removeLast();
        }
        return false;
    }
}
