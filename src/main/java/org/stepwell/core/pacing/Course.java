package org.stepwell.core.pacing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where a class stands in its unit on a day: the skills it works on, the one begun last first, and those still to come,
 * the nearest first. A skill whose expectation has ended is in neither.
 *
 * @param taught begun by the day
 * @param coming begun after it
 */
public record Course(List<Stage> taught, List<Stage> coming) {

    /**
     * One skill of the course.
     *
     * @param skill its code
     * @param from first day the class worked or will work on it
     * @param since day from which {@code step} has been expected; {@code null} while nothing is
     * @param step the step expected on the day, 1-5; {@code null} while nothing is
     * @param next first later day on which the expectation changes; {@code null} when it does not
     * @param nextStep the step expected from then on; {@code null} when the expectation ends or does not change
     */
    public record Stage(String skill, LocalDate from, @Nullable LocalDate since, @Nullable Integer step,
            @Nullable LocalDate next, @Nullable Integer nextStep) {}

    /** The course of a class by its pacing. */
    public static Course on(LocalDate day, Pacing pacing, SchoolCalendar calendar) {
        List<Stage> taught = new ArrayList<>();
        List<Stage> coming = new ArrayList<>();
        for (String skill : pacing.skills()) {
            LocalDate from = pacing.taughtFrom(skill, calendar).orElseThrow();
            Optional<PacingRow> now = pacing.rowOn(skill, day);
            if (now.isPresent() && now.get().expectedStep() == null) {
                continue;
            }
            Optional<PacingRow> next = pacing.rows().stream()
                    .filter(r -> r.skill().equals(skill) && r.due().isAfter(day)).findFirst();
            Stage stage = new Stage(skill, from, now.map(PacingRow::due).orElse(null),
                    now.map(PacingRow::expectedStep).orElse(null), next.map(PacingRow::due).orElse(null),
                    next.map(PacingRow::expectedStep).orElse(null));
            (from.isAfter(day) ? coming : taught).add(stage);
        }
        taught.sort(Comparator.comparing(Stage::from).reversed().thenComparing(Stage::skill, Comparator.reverseOrder()));
        coming.sort(Comparator.comparing(Stage::from).thenComparing(Stage::skill));
        return new Course(List.copyOf(taught), List.copyOf(coming));
    }
}
