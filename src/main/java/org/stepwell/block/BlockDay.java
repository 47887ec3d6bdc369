package org.stepwell.block;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.Stop;

/**
 * The block of a day as it stands.
 *
 * @param day school day
 * @param version from 1; each loss of time makes a new one
 * @param seatingId the groups it runs with
 * @param plan its rotations, school time
 * @param stop the loss that made this version; {@code null} as it began, or when it was not kept where it lay
 */
public record BlockDay(LocalDate day, int version, UUID seatingId, DayPlan plan, @Nullable Stop stop) {}
