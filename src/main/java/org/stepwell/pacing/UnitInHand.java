package org.stepwell.pacing;

import java.time.LocalDate;
import java.util.UUID;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;

/**
 * The unit a class works on.
 *
 * @param unitId the unit
 * @param title as the teacher calls it
 * @param startsOn first day
 * @param pacing what is due when
 * @param calendar written breaks; those inferred from silence are not in it
 */
public record UnitInHand(UUID unitId, String title, LocalDate startsOn, Pacing pacing, SchoolCalendar calendar) {}
