package org.stepwell.core.check;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What children answered in one unit check.
 *
 * @param items id of each item and the skill it belongs to, in order
 * @param rows one row per child, each with one mark per item: 1 right, 0 wrong, 0.5 half, {@link Double#NaN} not reached
 */
public record Responses(List<Item> items, List<double[]> rows) {
    /** One item; {@code skill} is {@code null} when the file names none. */
    public record Item(String id, @Nullable String skill) {}

    /** Copies the lists and holds that every row has a mark for every item. */
    public Responses {
        items = List.copyOf(items);
        rows = List.copyOf(rows);
        for (double[] row : rows) {
            if (row.length != items.size()) {
                throw new IllegalArgumentException(row.length + " marks for " + items.size() + " items");
            }
        }
    }
}
