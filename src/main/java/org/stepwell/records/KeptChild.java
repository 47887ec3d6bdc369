package org.stepwell.records;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A child on whom records are kept.
 *
 * @param childId the child
 * @param schoolKey the school's own id
 * @param name given and family name
 * @param className the class it came to last
 * @param lastDay last day in any class; {@code null} while it is in one
 * @param waits day the oldest request of the family was made that waits for an answer, or {@code null}
 */
public record KeptChild(UUID childId, String schoolKey, String name, String className, @Nullable LocalDate lastDay,
        @Nullable LocalDate waits) {}
