package org.stepwell.conference;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * The schedule of talks of a class.
 *
 * @param version 0 while there is none
 * @param slots in the order of time
 * @param arrivals who came and who did not, of those about whom somebody said so
 */
public record Schedule(int version, List<Slot> slots, Map<Visit, Arrival> arrivals) {

    /**
     * A household on its day.
     *
     * @param childId whose parents
     * @param day of the talk
     * @param household 1 or 2
     */
    public record Visit(UUID childId, LocalDate day, int household) {}

    /** Whether they came. */
    public enum Arrival {
        /** Nobody has said so yet, or it was taken back. */
        OPEN,
        /** They came. */
        CAME,
        /** They did not come. */
        NO_SHOW
    }

    /** Copies. */
    public Schedule {
        slots = slots.stream().sorted().toList();
        arrivals = Map.copyOf(arrivals);
    }

    /** Whether the household of a slot came. */
    public Arrival of(Slot slot) {
        UUID child = slot.childId();
        return child == null ? Arrival.OPEN : arrivals.getOrDefault(new Visit(child, slot.day(), slot.household()),
                Arrival.OPEN);
    }

    /** Whether a child has a slot that was not missed. */
    public boolean holds(UUID childId) {
        return slots.stream().anyMatch(slot -> childId.equals(slot.childId()) && of(slot) != Arrival.NO_SHOW);
    }
}
