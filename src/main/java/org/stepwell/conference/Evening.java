package org.stepwell.conference;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.wording.Language;

/**
 * A stretch of talks on one day.
 *
 * @param day school day
 * @param from when the first talk begins
 * @param to when the last is over
 * @param minutes of a talk, 5-90
 * @param talksToBreak talks after which a break comes; 0 for no break
 * @param breakMinutes of a break, 5-90
 */
public record Evening(LocalDate day, LocalTime from, LocalTime to, int minutes, int talksToBreak, int breakMinutes) {
    private static final int SHORTEST = 5;
    private static final int LONGEST = 90;

    /**
     * Its slots, all free: as many talks as fit, a break after each so many unless no talk would follow it.
     *
     * @throws Refused when the end is not after the beginning, a length lies outside 5-90 minutes, or no talk fits
     */
    public List<Slot> slots() {
        if (!to.isAfter(from)) {
            throw new Refused("conference.end");
        }
        if (minutes < SHORTEST || minutes > LONGEST || talksToBreak < 0
                || talksToBreak > 0 && (breakMinutes < SHORTEST || breakMinutes > LONGEST)) {
            throw new Refused("conference.minutes", SHORTEST, LONGEST);
        }
        List<Slot> slots = new ArrayList<>();
        int at = from.toSecondOfDay() / 60;
        int end = to.toSecondOfDay() / 60;
        int talks = 0;
        while (at + minutes <= end) {
            if (talksToBreak > 0 && talks > 0 && talks % talksToBreak == 0 && !slots.getLast().pause()) {
                if (at + breakMinutes + minutes > end) {
                    break;
                }
                slots.add(Slot.pause(day, time(at), breakMinutes));
                at += breakMinutes;
            }
            slots.add(Slot.free(day, time(at), minutes));
            at += minutes;
            talks++;
        }
        if (slots.isEmpty()) {
            throw new Refused("conference.none");
        }
        return slots;
    }

    private static LocalTime time(int minuteOfDay) {
        return LocalTime.of(minuteOfDay / 60, minuteOfDay % 60);
    }

    /** Gives free slots to children who have none, in the order given. */
    public static List<Slot> filled(List<Slot> slots, List<UUID> children) {
        var placed = slots.stream().map(Slot::childId).filter(java.util.Objects::nonNull).collect(Collectors.toSet());
        Iterator<UUID> left = children.stream().filter(child -> !placed.contains(child)).iterator();
        return slots.stream().map(slot -> slot.pause() || slot.childId() != null || !left.hasNext() ? slot
                : slot.of(left.next(), 1, Language.ENGLISH)).toList();
    }
}
