package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.Collection;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;

/**
 * What is known about a class beside its looks.
 *
 * @param progression the skills; may be empty, then nothing is known about prerequisites, phrases and numbers
 * @param pacing when each skill is due, and at which step
 * @param calendar the breaks as written down
 * @param breaksWritten whether somebody wrote the breaks down; when not, a school week in which nobody was seen is one
 */
public record ClassSetting(Progression progression, Pacing pacing, SchoolCalendar calendar, boolean breaksWritten) {

    /** Takes a calendar with at least one break as one that somebody wrote. */
    public ClassSetting(Progression progression, Pacing pacing, SchoolCalendar calendar) {
        this(progression, pacing, calendar, !calendar.breaks().isEmpty());
    }

    /**
     * The calendar as known on a day.
     *
     * @param seenDays days on which anybody of the class was seen; later ones are ignored
     */
    public SchoolCalendar calendarOn(LocalDate day, Collection<LocalDate> seenDays) {
        return breaksWritten ? calendar : calendar.withInferredBreaks(seenDays, day);
    }
}
