package org.stepwell.pacing;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.problem.Refused;

/**
 * A lesson as the teacher writes it.
 *
 * @param lessonId stays when the lesson is changed
 * @param number of the version; 0 for one not saved yet
 * @param position order in the unit
 * @param title as the teacher calls it, 1 to 200 letters
 * @param skills codes of the skills it is about
 * @param step step it works toward, 1-5; {@code null} = the one expected by the pacing
 * @param materials what has to lie ready, up to 1000 letters
 * @param points what to talk about, up to 4000 letters
 * @param days school days planned, 1 to 20
 */
public record Lesson(UUID lessonId, int number, int position, String title, List<String> skills,
        @Nullable Integer step, String materials, String points, int days) {
    /**
     * Checks what the store would refuse.
     *
     * @throws IllegalArgumentException saying what is wrong and what is accepted
     */
    public Lesson {
        skills = List.copyOf(skills);
        if (title.isBlank() || title.length() > 200) {
            throw new Refused("lesson.name");
        }
        if (days < 1 || days > 20) {
            throw new Refused("lesson.days", days);
        }
        if (step != null && (step < 1 || step > 5)) {
            throw new Refused("lesson.step", step);
        }
        if (materials.length() > 1000 || points.length() > 4000) {
            throw new Refused("lesson.long");
        }
    }

    /** The same at another place in the unit. */
    public Lesson at(int place) {
        return new Lesson(lessonId, number, place, title, skills, step, materials, points, days);
    }
}
