package org.stepwell.check;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.check.Mark;

/**
 * What stands in a cell.
 *
 * @param childId the child
 * @param item code of the item
 * @param entry 1 = the entry that counts, 2 = the second one, for comparing
 * @param number counts up with every change; a writer sends the number it saw
 * @param mark what stands there
 * @param error error tag of the skill, when the adult named one
 * @param by name of the adult who marked it
 */
public record CheckCell(UUID childId, String item, int entry, int number, Mark mark, @Nullable String error,
        String by) {}
