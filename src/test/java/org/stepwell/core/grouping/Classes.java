package org.stepwell.core.grouping;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import org.stepwell.core.tier.Tier;

/** Invented classes and wishes, and a check of an answer that shares nothing with the search. */
final class Classes {
    private Classes() {}

    static GroupChild child(String id, Tier tier, String focus, double estimate, String last) {
        return new GroupChild(id, tier, focus, estimate, last, last == null ? 0 : 1);
    }

    static String id(int i) {
        return "c" + (i < 10 ? "0" : "") + i;
    }

    static List<GroupChild> of(int count, RandomGenerator random) {
        List<GroupChild> children = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            boolean seen = random.nextInt(10) > 0;
            children.add(new GroupChild(id(i), random.nextInt(10) == 0 ? null : Tier.values()[random.nextInt(3)],
                    seen ? "T0" + (4 + random.nextInt(4)) : null, seen ? (10 + random.nextInt(41)) / 10.0 : null,
                    random.nextInt(5) == 0 ? null : "g" + random.nextInt(5), random.nextInt(4)));
        }
        return children;
    }

    static List<Wish> wishes(int children, int groups, int count, RandomGenerator random) {
        List<Wish> wishes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String one = id(random.nextInt(children));
            String other = id(random.nextInt(children));
            wishes.add(switch (random.nextInt(8)) {
                case 0, 1, 2, 3 -> new Wish.Apart(one, other);
                case 4, 5 -> new Wish.Together(one, other);
                case 6 -> new Wish.InGroup(one, 1 + random.nextInt(groups));
                default -> random.nextBoolean() ? new Wish.AwayAt(one, 1 + random.nextInt(groups))
                        : new Wish.WithSecondAdult(one);
            });
        }
        return wishes;
    }

    static GroupingTask task(List<GroupChild> children, int groups, List<Wish> wishes, Aim aim) {
        return new GroupingTask(children, groups, wishes, aim, List.of(),
                new TreeSet<>(groups > 1 ? List.of(1, 2) : List.of(1)));
    }

    static boolean keeps(Wish wish, java.util.Map<String, Integer> groupOf) {
        return switch (wish) {
            case Wish.Apart w -> !groupOf.get(w.one()).equals(groupOf.get(w.other()));
            case Wish.Together w -> groupOf.get(w.one()).equals(groupOf.get(w.other()));
            case Wish.InGroup w -> groupOf.get(w.child()) == w.group();
            case Wish.AwayAt w -> groupOf.get(w.child()) != w.rotation();
            case Wish.WithSecondAdult w -> groupOf.get(w.child()) <= 2;
        };
    }

    /** Sum of prices over pairs that sit together. */
    static long price(GroupingTask task, java.util.Map<String, Integer> groupOf) {
        long sum = 0;
        for (int i = 0; i < task.children().size(); i++) {
            for (int j = 0; j < i; j++) {
                GroupChild one = task.children().get(i);
                GroupChild other = task.children().get(j);
                if (groupOf.get(one.id()).equals(groupOf.get(other.id()))) {
                    sum += task.aim().price(one, other);
                }
            }
        }
        return sum;
    }

    /** The least price of any placement that keeps all wishes, by trying every one; -1 when there is none. */
    static long leastOfAll(GroupingTask task) {
        return tryAll(task, 0, new java.util.TreeMap<>(), new int[task.groups() + 1]);
    }

    private static long tryAll(GroupingTask task, int next, java.util.Map<String, Integer> groupOf, int[] sizes) {
        if (next == task.children().size()) {
            for (int g = 1; g <= task.groups(); g++) {
                if (sizes[g] < task.children().size() / task.groups()) {
                    return -1;
                }
            }
            return task.wishes().stream().allMatch(w -> keeps(w, groupOf)) ? price(task, groupOf) : -1;
        }
        long best = -1;
        for (int g = 1; g <= task.groups(); g++) {
            if (sizes[g] * task.groups() < task.children().size()) {
                sizes[g]++;
                groupOf.put(task.children().get(next).id(), g);
                long found = tryAll(task, next + 1, groupOf, sizes);
                best = found >= 0 && (best < 0 || found < best) ? found : best;
                sizes[g]--;
            }
        }
        return best;
    }
}
