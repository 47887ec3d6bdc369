package org.stepwell.pacing;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/**
 * What the teacher chose after a lesson.
 *
 * @param day school day of the lesson
 * @param number version of the choice of that day
 * @param lessonId the lesson
 * @param choice what was chosen
 * @param again children it is shown again to at the table
 * @param moved school days by which the due dates to come were moved
 * @param by name of the adult
 */
public record LessonChoice(LocalDate day, int number, UUID lessonId, Choice choice, List<UUID> again, int moved,
        String by) {

    /** The three ways on; none of them is proposed. */
    public enum Choice {
        /** The lesson takes another day. */
        ANOTHER_DAY,
        /** The class goes on. */
        MOVE_ON,
        /** The class goes on, and some children are shown it again at the table. */
        MOVE_ON_SHOW_AGAIN;

        /** The word in the store. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
