package org.stepwell.core.grouping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.search.strategy.Search;
import org.chocosolver.solver.search.strategy.selectors.values.IntDomainMin;
import org.chocosolver.solver.search.strategy.selectors.variables.InputOrder;
import org.chocosolver.solver.variables.IntVar;
import org.jspecify.annotations.Nullable;

/**
 * Places blocks by constraint search. Bounded by the number of choices made, never by a clock, and single-threaded:
 * the same task gives the same answer on every machine.
 */
final class PlacementSearch {
    private final Blocks blocks;

    PlacementSearch(Blocks blocks) {
        this.blocks = blocks;
    }

    /**
     * What a search found.
     *
     * @param place group of each block; {@code null} when none was found
     * @param complete whether every way was tried
     */
    record Found(int @Nullable [] place, boolean complete) {}

    /** Any placement that keeps all wishes: first in the given order of blocks, then led by what failed. */
    Found any(int[] order, long choices) {
        Found first = inOrder(order, choices / 10);
        return first.place() != null || first.complete() ? first : byConflict(choices);
    }

    private Found byConflict(long choices) {
        Model model = new Model();
        IntVar[] places = places(model, all(), allGroups());
        Solver solver = model.getSolver();
        solver.setSearch(Search.domOverWDegSearch(places));
        return run(solver, places, choices);
    }

    private Found inOrder(int[] order, long choices) {
        Model model = new Model();
        IntVar[] places = places(model, all(), allGroups());
        IntVar[] ordered = Arrays.stream(order).mapToObj(b -> places[b]).toArray(IntVar[]::new);
        Solver solver = model.getSolver();
        solver.setSearch(Search.intVarSearch(new InputOrder<>(model), new IntDomainMin(), ordered));
        return run(solver, places, choices);
    }

    private static Found run(Solver solver, IntVar[] places, long choices) {
        solver.limitNode(choices);
        if (solver.solve()) {
            return new Found(Arrays.stream(places).mapToInt(IntVar::getValue).toArray(), false);
        }
        return new Found(null, !solver.isStopCriterionMet());
    }

    /**
     * The best placement of the blocks now in some groups among just these groups.
     *
     * @param start a placement that keeps all wishes; blocks of other groups stay as they are
     * @param groups the groups to look at
     * @param choices how many choices at most
     * @return the best found, {@code null} when none is better; complete when there is none better still
     */
    Found better(int[] start, int[] groups, long choices) {
        int[] free = java.util.stream.IntStream.range(0, start.length)
                .filter(b -> Arrays.stream(groups).anyMatch(g -> g == start[b])).toArray();
        int[][] price = new int[free.length][free.length];
        int now = 0;
        for (int i = 0; i < free.length; i++) {
            for (int j = 0; j < free.length; j++) {
                price[i][j] = blocks.price[free[i]][free[j]];
                now += i < j && start[free[i]] == start[free[j]] ? price[i][j] : 0;
            }
        }
        if (now == 0) {
            return new Found(null, true);
        }
        Model model = new Model();
        IntVar[] places = places(model, free, groups);
        IntVar total = model.intVar("price", 0, now - 1, true);
        IntVar[] all = Arrays.copyOf(places, places.length + 1);
        all[places.length] = total;
        int[] size = Arrays.stream(free).map(b -> blocks.size[b]).toArray();
        new org.chocosolver.solver.constraints.Constraint("Price",
                new PriceBound(all, groups.length, price, size, blocks.task.smallest())).post();
        model.setObjective(Model.MINIMIZE, total);
        Solver solver = model.getSolver();
        CheapestPlace cheapest = new CheapestPlace(places, price, groups.length);
        solver.setSearch(Search.intVarSearch(cheapest::next, cheapest::value, places));
        solver.limitNode(choices);
        int[] best = null;
        while (solver.solve()) {
            best = start.clone();
            for (int i = 0; i < free.length; i++) {
                best[free[i]] = groups[places[i].getValue()];
            }
        }
        return new Found(best, !solver.isStopCriterionMet());
    }

    private int[] all() {
        return java.util.stream.IntStream.range(0, blocks.count()).toArray();
    }

    private int[] allGroups() {
        return java.util.stream.IntStream.range(0, blocks.task.groups()).toArray();
    }

    /** Variables for the free blocks among the groups, index within {@code groups}, with every wish posted. */
    private IntVar[] places(Model model, int[] free, int[] groups) {
        IntVar[] places = new IntVar[free.length];
        for (int i = 0; i < free.length; i++) {
            int block = free[i];
            int[] open = java.util.stream.IntStream.range(0, groups.length)
                    .filter(k -> blocks.allowed[block][groups[k]]).toArray();
            if (open.length == 0) {
                places[i] = model.intVar(0);
                model.falseConstraint().post();
            } else {
                places[i] = model.intVar("b" + block, open);
            }
        }
        IntVar[] load = new IntVar[groups.length];
        for (int k = 0; k < groups.length; k++) {
            load[k] = model.intVar("g" + k, blocks.task.smallest(), blocks.task.largest(), true);
        }
        int[] size = Arrays.stream(free).map(b -> blocks.size[b]).toArray();
        model.binPacking(places, size, load, 0).post();
        apart(model, places, free);
        for (int[] same : blocks.alike()) {
            int[] within = java.util.stream.IntStream.range(0, groups.length)
                    .filter(k -> Arrays.binarySearch(same, groups[k]) >= 0).toArray();
            if (within.length > 1) {
                model.intValuePrecedeChain(places, within).post();
            }
        }
        return places;
    }

    /** Blocks that are apart from each other all get different groups; the rest pair by pair. */
    private void apart(Model model, IntVar[] places, int[] free) {
        boolean[][] told = new boolean[free.length][free.length];
        for (int i = 0; i < free.length; i++) {
            for (int j = i + 1; j < free.length; j++) {
                if (blocks.apart[free[i]][free[j]] && !told[i][j]) {
                    List<Integer> clique = clique(free, i, j);
                    for (int one : clique) {
                        for (int other : clique) {
                            told[one][other] = true;
                        }
                    }
                    model.allDifferent(clique.stream().map(k -> places[k]).toArray(IntVar[]::new)).post();
                }
            }
        }
    }

    private List<Integer> clique(int[] free, int one, int other) {
        List<Integer> clique = new ArrayList<>(List.of(one, other));
        for (int k = 0; k < free.length; k++) {
            int next = k;
            if (clique.stream().allMatch(c -> c != next && blocks.apart[free[c]][free[next]])) {
                clique.add(k);
            }
        }
        return clique;
    }
}
