package org.stepwell.core.grouping;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * How a sharing out of children fares, whoever made it: for every change by hand, at once.
 *
 * @param price sum of {@link Aim#price} over all pairs that sit together
 * @param tables what each group is like, from group 1 on
 * @param broken wishes that are not kept
 * @param even whether sizes differ by at most one
 */
public record GroupScore(long price, List<Table> tables, List<Wish> broken, boolean even) {

    /**
     * What one group is like.
     *
     * @param group number, from 1
     * @param children ids, ascending
     * @param skills different skills its children work on
     * @param lowest lowest step shown; {@code null} when none is known
     * @param highest highest step shown; {@code null} when none is known
     * @param known pairs that sat together last time
     * @param pairs pairs there are
     */
    public record Table(int group, List<String> children, List<String> skills, @Nullable Double lowest,
            @Nullable Double highest, int known, int pairs) {}

    /** The score of a sharing out; children that {@code groupOf} does not name sit nowhere. */
    public static GroupScore of(GroupingTask task, Map<String, Integer> groupOf) {
        long price = 0;
        List<Table> tables = new ArrayList<>();
        int fewest = Integer.MAX_VALUE;
        int most = 0;
        for (int g = 1; g <= task.groups(); g++) {
            int group = g;
            List<GroupChild> own = task.children().stream()
                    .filter(c -> java.util.Objects.equals(groupOf.get(c.id()), group))
                    .sorted(java.util.Comparator.comparing(GroupChild::id)).toList();
            int known = 0;
            for (int i = 0; i < own.size(); i++) {
                for (int j = 0; j < i; j++) {
                    price += task.aim().price(own.get(i), own.get(j));
                    known += own.get(i).satWith(own.get(j)) ? 1 : 0;
                }
            }
            tables.add(table(g, own, known));
            fewest = Math.min(fewest, own.size());
            most = Math.max(most, own.size());
        }
        return new GroupScore(price, tables, task.wishes().stream().filter(w -> !keeps(task, w, groupOf)).toList(),
                most - fewest <= 1);
    }

    private static Table table(int group, List<GroupChild> own, int known) {
        TreeSet<String> skills = new TreeSet<>();
        Double lowest = null;
        Double highest = null;
        for (GroupChild child : own) {
            if (child.focus() != null) {
                skills.add(child.focus());
            }
            Double step = child.estimate();
            if (step != null) {
                lowest = lowest == null || step < lowest ? step : lowest;
                highest = highest == null || step > highest ? step : highest;
            }
        }
        return new Table(group, own.stream().map(GroupChild::id).toList(), List.copyOf(skills), lowest, highest, known,
                own.size() * (own.size() - 1) / 2);
    }

    private static boolean keeps(GroupingTask task, Wish wish, Map<String, Integer> groupOf) {
        Integer one = groupOf.get(wish.children().getFirst());
        Integer other = groupOf.get(wish.children().getLast());
        if (one == null || other == null) {
            return true;
        }
        return switch (wish) {
            case Wish.Apart w -> !one.equals(other);
            case Wish.Together w -> one.equals(other);
            case Wish.InGroup w -> one == w.group();
            case Wish.AwayAt w -> task.turn(one) != w.rotation();
            case Wish.WithSecondAdult w -> task.secondAdult().contains(one);
        };
    }
}
