package org.stepwell.pacing;

import java.time.LocalDate;
import java.util.Locale;
import java.util.UUID;

/**
 * A child to look at, or to show something again, at the table. A look at the skill since then ends it.
 *
 * @param childId the child
 * @param skill code of the skill
 * @param why where it comes from
 * @param madeOn school day it was made
 */
public record TableTask(UUID childId, String skill, Why why, LocalDate madeOn) {
    /** Where a task comes from. */
    public enum Why {
        /** Shown again after a lesson. */
        SHOW_AGAIN,
        /** A prerequisite without fresh evidence. */
        LOOK_AGAIN,
        /** Carried over from a unit check. */
        CARRY_OVER;

        /** The word in the store. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
