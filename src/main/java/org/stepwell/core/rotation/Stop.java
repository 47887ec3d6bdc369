package org.stepwell.core.rotation;

import java.time.LocalTime;
import java.util.List;

/**
 * Minutes in which the clock of a block stands still.
 *
 * @param from when it stopped, school time
 * @param minutes how long, 1 to 120
 */
public record Stop(LocalTime from, int minutes) {
    /** When the clock goes on. */
    public LocalTime ends() {
        return from.plusMinutes(minutes);
    }

    /** Whether the clock stands still at a time. */
    public boolean holds(LocalTime time) {
        return !time.isBefore(from) && time.isBefore(ends());
    }

    /** When a stop that is told of at a time begins: at once, or after those in which the clock stands still already. */
    public static LocalTime next(List<Stop> before, LocalTime told) {
        return before.stream().map(Stop::ends).filter(told::isBefore).max(LocalTime::compareTo).orElse(told);
    }
}
