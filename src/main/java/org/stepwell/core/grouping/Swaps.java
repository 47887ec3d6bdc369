package org.stepwell.core.grouping;

/** Betters a placement by the best single exchange of two blocks, or move of one, until there is none. */
final class Swaps {
    private final Blocks blocks;
    private final int groups;

    Swaps(Blocks blocks) {
        this.blocks = blocks;
        this.groups = blocks.task.groups();
    }

    int[] better(int[] start) {
        int[] place = start.clone();
        while (step(place)) {
            // each step lowers the price, so this ends
        }
        return place;
    }

    private boolean step(int[] place) {
        long[][] paid = paid(place);
        int[] load = load(place);
        long best = 0;
        int block = -1;
        int partner = -1;
        int target = -1;
        for (int a = 0; a < place.length; a++) {
            for (int g = 0; g < groups; g++) {
                long change = paid[a][g] - paid[a][place[a]];
                if (change < best && fits(place, load, a, -1, g)) {
                    best = change;
                    block = a;
                    partner = -1;
                    target = g;
                }
            }
            for (int b = a + 1; b < place.length; b++) {
                long change = paid[a][place[b]] - paid[a][place[a]] + paid[b][place[a]] - paid[b][place[b]]
                        - 2L * blocks.price[a][b];
                if (place[a] != place[b] && change < best && fits(place, load, a, b, place[b])
                        && fits(place, load, b, a, place[a])) {
                    best = change;
                    block = a;
                    partner = b;
                    target = place[b];
                }
            }
        }
        if (block < 0) {
            return false;
        }
        int from = place[block];
        place[block] = target;
        if (partner >= 0) {
            place[partner] = from;
        }
        return true;
    }

    /** Whether {@code block} may go to the group when {@code leaving} (or nobody, -1) goes the other way. */
    private boolean fits(int[] place, int[] load, int block, int leaving, int group) {
        if (group == place[block] || !blocks.allowed[block][group]) {
            return false;
        }
        int back = leaving < 0 ? 0 : blocks.size[leaving];
        int into = load[group] + blocks.size[block] - back;
        int left = load[place[block]] - blocks.size[block] + back;
        if (into > blocks.task.largest() || left < blocks.task.smallest()) {
            return false;
        }
        for (int other = 0; other < place.length; other++) {
            if (other != leaving && place[other] == group && blocks.apart[block][other]) {
                return false;
            }
        }
        return true;
    }

    private long[][] paid(int[] place) {
        long[][] paid = new long[place.length][groups];
        for (int b = 0; b < place.length; b++) {
            for (int other = 0; other < place.length; other++) {
                paid[b][place[other]] += blocks.price[b][other];
            }
        }
        return paid;
    }

    private int[] load(int[] place) {
        int[] load = new int[groups];
        for (int b = 0; b < place.length; b++) {
            load[place[b]] += blocks.size[b];
        }
        return load;
    }
}
