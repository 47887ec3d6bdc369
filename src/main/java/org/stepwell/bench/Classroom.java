package org.stepwell.bench;

import java.time.LocalDate;
import java.util.List;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.tier.Tier;

/**
 * One simulated classroom: what was written down, and what was true.
 *
 * @param looks what the adults wrote, by date
 * @param calendar the breaks as written down; none where nobody did
 * @param reviews the review days, oldest first
 * @param children what was true for each child
 */
record Classroom(
        List<Look> looks,
        Pacing pacing,
        SchoolCalendar calendar,
        List<LocalDate> reviews,
        List<Child> children) {

    /**
     * One child.
     *
     * @param id as in the looks
     * @param truth the true tier on each review day
     * @param events what happened, day by day, as the observer who knows how the data came about is told it
     */
    record Child(String id, List<Tier> truth, List<Event> events) {}

    /**
     * One weekday of one child.
     *
     * @param index of the weekday from the first on
     * @param away no school that day, for the class
     * @param ill the child was absent
     * @param notes what was noted, in order
     */
    record Event(int index, boolean away, boolean ill, List<Note> notes) {}

    /** One look as the simulation made it; step 0-4. */
    record Note(int skill, int eye, Help help, int step, boolean sameSitting) {}
}
