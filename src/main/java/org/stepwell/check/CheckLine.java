package org.stepwell.check;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A unit check in a list.
 *
 * @param checkId the check
 * @param unitId the unit it checks
 * @param unitTitle as the teacher calls the unit
 * @param title as the teacher calls the check
 * @param heldOn day the class sat it
 * @param retakeOf the check whose missed skills it asks again; {@code null} for one of its own
 * @param counted whether its marks count as evidence
 */
public record CheckLine(UUID checkId, UUID unitId, String unitTitle, String title, LocalDate heldOn,
        @Nullable UUID retakeOf, boolean counted) {}
