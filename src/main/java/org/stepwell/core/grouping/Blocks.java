package org.stepwell.core.grouping;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A task in numbers: children who are to be together are one block, blocks are 0 to n-1 in the order of their first
 * id, groups are 0 to N-1. Wishes must name known children and groups only.
 */
final class Blocks {
    final GroupingTask task;
    /** Children of each block, by id. */
    final List<List<GroupChild>> members = new ArrayList<>();
    final int[] size;
    /** Which blocks may not sit together. */
    final boolean[][] apart;
    /** Which block may sit in which group. */
    final boolean[][] allowed;
    /** Price of two blocks at one table. */
    final int[][] price;
    /** Price of the pairs within blocks, which nothing can change. */
    final long within;
    private final Map<String, Integer> blockOf = new HashMap<>();

    Blocks(GroupingTask task) {
        this.task = task;
        gather();
        int n = members.size();
        size = members.stream().mapToInt(List::size).toArray();
        apart = new boolean[n][n];
        allowed = new boolean[n][task.groups()];
        for (boolean[] row : allowed) {
            java.util.Arrays.fill(row, true);
        }
        task.wishes().forEach(this::apply);
        price = new int[n][n];
        long inside = 0;
        for (int one = 0; one < n; one++) {
            for (int other = 0; other < one; other++) {
                price[one][other] = price(members.get(one), members.get(other));
                price[other][one] = price[one][other];
            }
            inside += price(members.get(one), members.get(one)) / 2;
        }
        within = inside;
    }

    /** Joins what is to be together, whatever the order of the wishes. */
    private void gather() {
        List<GroupChild> children = task.children().stream().sorted(Comparator.comparing(GroupChild::id)).toList();
        Map<String, String> leader = new TreeMap<>();
        children.forEach(c -> leader.put(c.id(), c.id()));
        for (Wish wish : task.wishes()) {
            if (wish instanceof Wish.Together both) {
                String one = leader.get(both.one());
                String other = leader.get(both.other());
                if (!one.equals(other)) {
                    String first = one.compareTo(other) < 0 ? one : other;
                    String second = first.equals(one) ? other : one;
                    leader.replaceAll((id, l) -> l.equals(second) ? first : l);
                }
            }
        }
        Map<String, List<GroupChild>> byLeader = new LinkedHashMap<>();
        children.forEach(c -> byLeader.computeIfAbsent(leader.get(c.id()), l -> new ArrayList<>()).add(c));
        byLeader.values().forEach(block -> {
            block.forEach(c -> blockOf.put(c.id(), members.size()));
            members.add(List.copyOf(block));
        });
    }

    private void apply(Wish wish) {
        switch (wish) {
            case Wish.Together both -> { }
            case Wish.Apart both -> {
                apart[block(both.one())][block(both.other())] = true;
                apart[block(both.other())][block(both.one())] = true;
            }
            case Wish.InGroup place -> keep(place.child(), g -> g == place.group());
            case Wish.AwayAt away -> keep(away.child(), g -> task.turn(g) != away.rotation());
            case Wish.WithSecondAdult second -> keep(second.child(), g -> task.secondAdult().contains(g));
        }
    }

    private void keep(String child, java.util.function.IntPredicate group) {
        boolean[] row = allowed[block(child)];
        for (int g = 0; g < row.length; g++) {
            row[g] &= group.test(g + 1);
        }
    }

    private int price(List<GroupChild> ones, List<GroupChild> others) {
        int sum = 0;
        for (GroupChild one : ones) {
            for (GroupChild other : others) {
                sum += one == other ? 0 : task.aim().price(one, other);
            }
        }
        return sum;
    }

    int block(String child) {
        return blockOf.get(child);
    }

    int count() {
        return size.length;
    }

    /** Price of a whole placement. */
    long price(int[] place) {
        long sum = within;
        for (int one = 0; one < place.length; one++) {
            for (int other = 0; other < one; other++) {
                if (place[one] == place[other]) {
                    sum += price[one][other];
                }
            }
        }
        return sum;
    }

    /** Groups that no wish tells apart, so that their numbers may be swapped: classes of them, each ascending. */
    List<int[]> alike() {
        Map<String, List<Integer>> byColumn = new LinkedHashMap<>();
        for (int g = 0; g < task.groups(); g++) {
            StringBuilder column = new StringBuilder();
            for (boolean[] row : allowed) {
                column.append(row[g] ? '1' : '0');
            }
            byColumn.computeIfAbsent(column.toString(), c -> new ArrayList<>()).add(g);
        }
        return byColumn.values().stream().map(c -> c.stream().mapToInt(Integer::intValue).toArray()).toList();
    }

    /** The placement as an answer; groups that no wish tells apart are numbered in the order of their first id. */
    Grouping grouping(int[] place, boolean proven) {
        int[] number = new int[task.groups()];
        java.util.Arrays.fill(number, -1);
        int[][] alikeTo = new int[task.groups()][];
        int[] taken = new int[task.groups()];
        for (int[] same : alike()) {
            for (int g : same) {
                alikeTo[g] = same;
            }
        }
        Map<String, Integer> result = new TreeMap<>();
        for (int b = 0; b < place.length; b++) {
            if (number[place[b]] < 0) {
                int[] same = alikeTo[place[b]];
                number[place[b]] = same[taken[same[0]]++];
            }
            for (GroupChild child : members.get(b)) {
                result.put(child.id(), number[place[b]] + 1);
            }
        }
        return new Grouping(new TreeMap<>(result), price(place), proven);
    }
}
