package org.stepwell.pacing;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.check.LessonStanding;
import org.stepwell.core.pacing.UnitCourse;
import org.stepwell.roster.ChildRow;

/**
 * A unit as it stands on a school day.
 *
 * @param unit the unit in hand
 * @param day school day it is about: today, or the last school day before
 * @param lessons in order
 * @param choices what was chosen, one for each day, oldest first
 * @param inHand the lesson of the day; {@code null} when all are done or there is none
 * @param since first day of that lesson
 * @param steps step it works toward, by skill
 * @param standing who has it, by the school's own ids
 * @param end projected end of the unit
 * @param children the class, by name
 * @param tasks open table tasks
 */
public record UnitPlan(UnitInHand unit, LocalDate day, List<Lesson> lessons, List<LessonChoice> choices,
        @Nullable Lesson inHand, LocalDate since, Map<String, Integer> steps, LessonStanding standing,
        UnitCourse.End end, List<ChildRow> children, List<TableTask> tasks) {

    /** The choice already made for the day. */
    public Optional<LessonChoice> chosenToday() {
        return choices.stream().filter(c -> c.day().equals(day)).findFirst();
    }

    /** Days used for a lesson so far, that of the day included once it was chosen. */
    public int daysUsed(UUID lessonId) {
        return (int) choices.stream().filter(c -> c.lessonId().equals(lessonId)).count();
    }

    /** Whether the class has moved on from a lesson. */
    public boolean done(UUID lessonId) {
        return choices.stream().anyMatch(c -> c.lessonId().equals(lessonId)
                && c.choice() != LessonChoice.Choice.ANOTHER_DAY);
    }

    /** Names of children by their school's own ids, in the order given. */
    public List<ChildRow> rows(List<String> keys) {
        return children.stream().filter(c -> keys.contains(c.schoolKey())).toList();
    }
}
