package org.stepwell.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.Mark;
import org.stepwell.core.check.Responses;
import org.stepwell.roster.ChildRow;

/**
 * A check with everything on it, limited to the children this adult may see.
 *
 * @param line the check
 * @param items the blueprint, in order
 * @param children by name
 * @param cells what stands in the cells, both entries
 * @param sittings by child; a child without one sat it with the class
 * @param asked for a retake the skills asked of each child; empty for a check of its own, where all are asked
 */
public record CheckSheet(CheckLine line, List<CheckItem> items, List<ChildRow> children, List<CheckCell> cells,
        Map<UUID, CheckSitting> sittings, Map<UUID, Set<String>> asked) {

    /** The marks of a child in an entry, by item. */
    public Map<String, Mark> marks(UUID childId, int entry) {
        Map<String, Mark> marks = new HashMap<>();
        cells.stream().filter(c -> c.childId().equals(childId) && c.entry() == entry)
                .forEach(c -> marks.put(c.item(), c.mark()));
        return marks;
    }

    /** How the child sat it. */
    public CheckSitting sitting(UUID childId) {
        return sittings.getOrDefault(childId, CheckSitting.WITH_THE_CLASS);
    }

    /** The items asked of a child: all, or in a retake those of the skills it missed. */
    public List<CheckItem> itemsFor(UUID childId) {
        return line.retakeOf() == null ? items
                : items.stream().filter(i -> asked.getOrDefault(childId, Set.of()).contains(i.skill())).toList();
    }

    /** Children with at least one mark in the entry that counts. */
    public List<ChildRow> sat() {
        return children.stream().filter(c -> marks(c.childId(), 1).values().stream()
                .anyMatch(m -> m != Mark.CLEARED)).toList();
    }

    /** Children who have still to make it up: absent ones, and in a check that counts already all without a mark. */
    public List<ChildRow> toMakeUp() {
        Set<ChildRow> sat = new LinkedHashSet<>(sat());
        return children.stream().filter(c -> !sat.contains(c) && !itemsFor(c.childId()).isEmpty()
                && (sitting(c.childId()).absent() || line.counted())).toList();
    }

    /** The answers of those who sat it, in the order of {@link #sat()}. */
    public Responses responses() {
        List<double[]> rows = new ArrayList<>();
        for (ChildRow child : sat()) {
            Map<String, Mark> marks = marks(child.childId(), 1);
            rows.add(items.stream().mapToDouble(i -> marks.getOrDefault(i.code(), Mark.CLEARED).value()).toArray());
        }
        return new Responses(items.stream().map(i -> new Responses.Item(i.code(), i.skill())).toList(), rows);
    }

    /** Cells of two entries that do not agree; cells without a second entry are left out. */
    public List<Difference> differences() {
        List<Difference> all = new ArrayList<>();
        for (ChildRow child : children) {
            Map<String, Mark> first = marks(child.childId(), 1);
            Map<String, Mark> second = marks(child.childId(), 2);
            for (CheckItem item : items) {
                Mark two = second.getOrDefault(item.code(), Mark.CLEARED);
                Mark one = first.getOrDefault(item.code(), Mark.CLEARED);
                if (two != Mark.CLEARED && one != two) {
                    all.add(new Difference(child, item, one, two));
                }
            }
        }
        return all;
    }

    /** How many cells have a mark in the entry. */
    public long marked(int entry) {
        return cells.stream().filter(c -> c.entry() == entry && c.mark() != Mark.CLEARED).count();
    }

    /** A cell that two entries see differently. */
    public record Difference(ChildRow child, CheckItem item, Mark first, Mark second) {}
}
