package org.stepwell.block;

import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.LostTime;
import org.stepwell.core.rotation.Stop;

/** The versions of one day's block in order, those left out that a later one stands in place of. */
record DayVersions(List<BlockDay> held) {
    static DayVersions of(List<BlockDay> all) {
        List<BlockDay> held = new ArrayList<>();
        for (BlockDay day : all) {
            Integer from = day.insteadOf();
            if (from != null) {
                held.removeIf(before -> before.version() >= from);
            }
            held.add(day);
        }
        return new DayVersions(List.copyOf(held));
    }

    /** The day as it runs; {@code null} before it begins. */
    @Nullable BlockDay running() {
        return held.isEmpty() ? null : held.getLast();
    }

    /** When the clock stood or stands still, in order. */
    List<Stop> stops() {
        return held.stream().map(BlockDay::stop).filter(Objects::nonNull).toList();
    }

    /**
     * What a day goes on from when its loss ends earlier than was said.
     *
     * @param plan as it stood before the loss
     * @param way what was done about it
     * @param stop the loss as long as it was, to the next whole minute
     * @param version the first version made for it
     */
    record Early(DayPlan plan, LostTime way, Stop stop, int version) {}

    /**
     * The loss that runs at a time, cut short there; what was added to it meanwhile goes with it.
     *
     * @throws Refused when the clock does not stand still then
     */
    Early cutAt(LocalTime now) {
        for (int i = 1; i < held.size(); i++) {
            BlockDay day = held.get(i);
            Stop stop = day.stop();
            if (stop != null && day.way() != null && stop.holds(now)) {
                int minutes = (int) Math.max(1, stop.from().until(now.plusSeconds(59), ChronoUnit.MINUTES));
                return new Early(held.get(i - 1).plan(), day.way(), new Stop(stop.from(), Math.min(minutes, stop.minutes())),
                        day.version());
            }
        }
        throw new Refused("block.goes");
    }
}
