package org.stepwell.core.grouping;

import org.chocosolver.solver.variables.IntVar;

/** Which block next, and where first: the block that loses most when it misses its cheapest group, and that group. */
final class CheapestPlace {
    private final IntVar[] places;
    private final int[][] price;
    private final long[][] placed;

    CheapestPlace(IntVar[] places, int[][] price, int groups) {
        this.places = places;
        this.price = price;
        this.placed = new long[places.length][groups];
    }

    /** The open block to place next; {@code null} when all are placed. */
    @org.jspecify.annotations.Nullable IntVar next(IntVar[] ignored) {
        tally();
        IntVar chosen = null;
        long most = -1;
        int fewest = Integer.MAX_VALUE;
        for (int b = 0; b < places.length; b++) {
            if (!places[b].isInstantiated()) {
                long regret = regret(b);
                int open = Math.min(places[b].getDomainSize(), 2);
                if (open < fewest || open == fewest && regret > most) {
                    fewest = open;
                    most = regret;
                    chosen = places[b];
                }
            }
        }
        return chosen;
    }

    private long regret(int b) {
        long first = Long.MAX_VALUE;
        long second = Long.MAX_VALUE;
        for (int g = places[b].getLB(); g <= places[b].getUB(); g = places[b].nextValue(g)) {
            long here = placed[b][g];
            if (here < first) {
                second = first;
                first = here;
            } else if (here < second) {
                second = here;
            }
        }
        return second == Long.MAX_VALUE ? 0 : second - first;
    }

    /** The cheapest group still open to the block. */
    int value(IntVar place) {
        tally();
        int b = 0;
        while (places[b] != place) {
            b++;
        }
        int best = place.getLB();
        for (int g = place.getLB(); g <= place.getUB(); g = place.nextValue(g)) {
            if (placed[b][g] < placed[b][best]) {
                best = g;
            }
        }
        return best;
    }

    private void tally() {
        for (long[] row : placed) {
            java.util.Arrays.fill(row, 0);
        }
        for (int other = 0; other < places.length; other++) {
            if (places[other].isInstantiated()) {
                int g = places[other].getValue();
                for (int b = 0; b < places.length; b++) {
                    placed[b][g] += price[b][other];
                }
            }
        }
    }
}
