package org.stepwell.core.pacing;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.problem.Refused;

/**
 * One line of the class's pacing: from {@code due} on, the skill is expected at that step.
 *
 * @param skill code of the skill; need not be in a progression
 * @param taughtFrom first day the class worked on it; {@code null} = ten school days before its first due day
 * @param due first day on which the row holds
 * @param expectedStep 1-5; {@code null} ends the expectation
 */
public record PacingRow(
        String skill, @Nullable LocalDate taughtFrom, LocalDate due, @Nullable Integer expectedStep) {

    /** Checks the step. */
    public PacingRow {
        if (expectedStep != null && (expectedStep < 1 || expectedStep > 5)) {
            throw new Refused("pacing.step", expectedStep);
        }
    }
}
