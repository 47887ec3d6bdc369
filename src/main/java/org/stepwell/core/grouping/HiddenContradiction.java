package org.stepwell.core.grouping;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.stepwell.core.grouping.Contradiction.Kind;

/**
 * Wishes of which each can be kept and all cannot. Gives a smallest such set: leave out any one of them, and groups
 * are found.
 */
final class HiddenContradiction {
    private HiddenContradiction() {}

    static Contradiction of(GroupingTask task) {
        GroupingTask ordered = PlainContradictions.ordered(task);
        List<Wish> kept = new ArrayList<>(ordered.wishes());
        for (int part = Math.max(1, kept.size() / 2);; part = part / 2) {
            for (int from = 0; from < kept.size();) {
                List<Wish> rest = new ArrayList<>(kept);
                rest.subList(from, Math.min(from + part, kept.size())).clear();
                if (GroupFinder.anyPlacement(task.with(rest)).place() == null) {
                    kept = rest;
                } else {
                    from += part;
                }
            }
            if (part == 1) {
                break;
            }
        }
        Set<String> children = new TreeSet<>();
        kept.forEach(w -> children.addAll(w.children()));
        boolean proven = GroupFinder.anyPlacement(task.with(kept)).complete();
        return new Contradiction(proven ? Kind.NOT_ALL : Kind.NONE_FOUND, List.copyOf(children), kept, 0);
    }
}
