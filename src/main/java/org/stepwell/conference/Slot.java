package org.stepwell.conference;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.wording.Language;

/**
 * A time for one talk, or a break.
 *
 * @param day school day
 * @param start time of the school's clock
 * @param minutes how long, 5-90
 * @param pause whether it is a break
 * @param childId whose parents come; {@code null} while it is free
 * @param household 1, or 2 for the other of two households
 * @param language language of this household's copy of the note
 */
public record Slot(LocalDate day, LocalTime start, int minutes, boolean pause, @Nullable UUID childId, int household,
        Language language) implements Comparable<Slot> {

    /** A time nobody has yet. */
    static Slot free(LocalDate day, LocalTime start, int minutes) {
        return new Slot(day, start, minutes, false, null, 1, Language.ENGLISH);
    }

    /** A break. */
    static Slot pause(LocalDate day, LocalTime start, int minutes) {
        return new Slot(day, start, minutes, true, null, 1, Language.ENGLISH);
    }

    /** The same time for the parents of a child. */
    public Slot of(UUID child, int ofHousehold, Language copy) {
        return new Slot(day, start, minutes, false, child, ofHousehold, copy);
    }

    /** The same time, free or a break. */
    public Slot emptied(boolean asPause) {
        return asPause ? pause(day, start, minutes) : free(day, start, minutes);
    }

    /** When it is over. */
    public LocalTime end() {
        return start.plusMinutes(minutes);
    }

    /** In the order of time. */
    @Override
    public int compareTo(Slot other) {
        int days = day.compareTo(other.day);
        return days != 0 ? days : start.compareTo(other.start);
    }
}
