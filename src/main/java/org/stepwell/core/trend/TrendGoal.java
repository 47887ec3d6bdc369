package org.stepwell.core.trend;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Where help is meant to lead, and by when.
 *
 * @param skill code of the skill it is about; {@code null} = the unit
 * @param from day on which the line begins
 * @param start value on that day: a step, 1 to 5, or for the unit a share of the due skills, 0 to 1
 * @param by day by which the goal is to be reached; after {@code from}
 * @param target the goal, in the unit of {@code start}
 */
public record TrendGoal(@Nullable String skill, LocalDate from, double start, LocalDate by, double target) {
    /** Holds that the goal lies after its start. */
    public TrendGoal {
        if (!by.isAfter(from)) {
            throw new IllegalArgumentException("a goal by " + by + " is not after its start on " + from);
        }
    }
}
