package org.stepwell.core.grouping;

import org.chocosolver.solver.constraints.Propagator;
import org.chocosolver.solver.constraints.PropagatorPriority;
import org.chocosolver.solver.exception.ContradictionException;
import org.chocosolver.solver.variables.IntVar;
import org.chocosolver.util.ESat;

/**
 * Ties the price to the places: what the placed blocks cost, and the least that every other block will add wherever it
 * goes. An open block pays for the placed company of its cheapest group and, since groups are nearly equal in size,
 * for half of its cheapest pairs with other open blocks, as each such pair is counted from both ends.
 */
final class PriceBound extends Propagator<IntVar> {
    private final int count;
    private final int groups;
    private final int[][] price;
    private final int[] size;
    private final int smallest;
    private final int largestBlock;
    /** For each block the others, cheapest first. */
    private final int[][] cheapest;
    private final long[][] placed;
    private final int[] load;

    /** @param vars places of the blocks, then the price of all pairs of blocks in one group */
    PriceBound(IntVar[] vars, int groups, int[][] price, int[] size, int smallest) {
        super(vars, PropagatorPriority.QUADRATIC, false);
        this.count = vars.length - 1;
        this.groups = groups;
        this.price = price;
        this.size = size;
        this.smallest = smallest;
        this.largestBlock = java.util.Arrays.stream(size).max().orElse(1);
        this.placed = new long[count][groups];
        this.load = new int[groups];
        this.cheapest = new int[count][];
        for (int b = 0; b < count; b++) {
            int own = b;
            cheapest[b] = java.util.stream.IntStream.range(0, count).filter(o -> o != own).boxed()
                    .sorted(java.util.Comparator.<Integer>comparingInt(o -> price[own][o]).thenComparingInt(o -> o))
                    .mapToInt(Integer::intValue).toArray();
        }
    }

    @Override
    public void propagate(int mask) throws ContradictionException {
        IntVar total = vars[count];
        long sure = tally();
        long twice = 2 * sure;
        long[] least = new long[count];
        for (int b = 0; b < count; b++) {
            if (!vars[b].isInstantiated()) {
                least[b] = Long.MAX_VALUE;
                for (int g = vars[b].getLB(); g <= vars[b].getUB(); g = vars[b].nextValue(g)) {
                    least[b] = Math.min(least[b], twiceAdded(b, g));
                }
                twice += least[b];
            }
        }
        total.updateLowerBound((int) ((twice + 1) / 2), this);
        long room = 2L * total.getUB() - twice;
        for (int b = 0; b < count; b++) {
            if (!vars[b].isInstantiated()) {
                for (int g = vars[b].getLB(); g <= vars[b].getUB(); g = vars[b].nextValue(g)) {
                    if (twiceAdded(b, g) - least[b] > room) {
                        vars[b].removeValue(g, this);
                    }
                }
            }
        }
        if (isCompletelyPlaced()) {
            total.instantiateTo((int) tally(), this);
        }
    }

    /** Price of the placed pairs; fills what each block would pay in each group, and the loads. */
    private long tally() {
        long twice = 0;
        java.util.Arrays.fill(load, 0);
        for (int b = 0; b < count; b++) {
            java.util.Arrays.fill(placed[b], 0);
        }
        for (int other = 0; other < count; other++) {
            if (vars[other].isInstantiated()) {
                int g = vars[other].getValue();
                load[g] += size[other];
                for (int b = 0; b < count; b++) {
                    placed[b][g] += price[b][other];
                }
            }
        }
        for (int b = 0; b < count; b++) {
            if (vars[b].isInstantiated()) {
                twice += placed[b][vars[b].getValue()];
            }
        }
        return twice / 2;
    }

    /** Twice the least that an open block adds in a group. */
    private long twiceAdded(int block, int group) {
        long sum = 2 * placed[block][group];
        int missing = smallest - load[group] - size[block];
        int companions = missing <= 0 ? 0 : (missing + largestBlock - 1) / largestBlock;
        for (int i = 0; companions > 0 && i < cheapest[block].length; i++) {
            int other = cheapest[block][i];
            if (!vars[other].isInstantiated() && vars[other].contains(group)) {
                sum += price[block][other];
                companions--;
            }
        }
        return sum;
    }

    private boolean isCompletelyPlaced() {
        for (int b = 0; b < count; b++) {
            if (!vars[b].isInstantiated()) {
                return false;
            }
        }
        return true;
    }

    @Override
    public ESat isEntailed() {
        if (!isCompletelyPlaced() || !vars[count].isInstantiated()) {
            return ESat.UNDEFINED;
        }
        return ESat.eval(tally() == vars[count].getValue());
    }
}
