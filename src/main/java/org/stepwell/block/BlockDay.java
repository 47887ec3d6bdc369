package org.stepwell.block;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.LostTime;
import org.stepwell.core.rotation.Stop;

/**
 * The block of a day as it stands.
 *
 * @param day school day
 * @param version from 1; each loss of time makes a new one
 * @param seatingId the groups it runs with
 * @param plan its rotations, school time
 * @param way what was done about the loss that made this version; {@code null} as it began
 * @param stop that loss; {@code null} as it began, or when it was not kept where it lay
 * @param insteadOf from this version on those before no longer count, since their loss ended early; {@code null}: none
 */
public record BlockDay(LocalDate day, int version, UUID seatingId, DayPlan plan, @Nullable LostTime way,
        @Nullable Stop stop, @Nullable Integer insteadOf) {}
