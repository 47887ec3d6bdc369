package org.stepwell.block;

import java.time.LocalDate;
import java.util.UUID;
import org.stepwell.core.rotation.DayPlan;

/**
 * The block of a day as it stands.
 *
 * @param day school day
 * @param version from 1; each loss of time makes a new one
 * @param seatingId the groups it runs with
 * @param plan its rotations, school time
 */
public record BlockDay(LocalDate day, int version, UUID seatingId, DayPlan plan) {}
