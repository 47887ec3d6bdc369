package org.stepwell.core.pacing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stepwell.core.pacing.Course.Stage;

class CourseTest {
    private static final Pacing PACING = new Pacing(List.of(
            new PacingRow("T01", day("2026-01-05"), day("2026-01-12"), 3),
            new PacingRow("T01", null, day("2026-02-02"), null),
            new PacingRow("T05", day("2026-01-12"), day("2026-01-26"), 3),
            new PacingRow("T05", null, day("2026-02-09"), 4),
            new PacingRow("T06", day("2026-01-20"), day("2026-02-02"), 3),
            new PacingRow("T08", day("2026-02-04"), day("2026-02-16"), 3)));

    private static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    private static Course on(String day) {
        return Course.on(day(day), PACING, new SchoolCalendar(List.of()));
    }

    @Test
    void theSkillBegunLastComesFirstThoughItIsNotDueYet() {
        assertThat(on("2026-01-27").taught()).containsExactly(
                new Stage("T06", day("2026-01-20"), null, null, day("2026-02-02"), 3),
                new Stage("T05", day("2026-01-12"), day("2026-01-26"), 3, day("2026-02-09"), 4),
                new Stage("T01", day("2026-01-05"), day("2026-01-12"), 3, day("2026-02-02"), null));
    }

    @Test
    void whatIsToComeStandsApartAndWhatHasEndedIsGone() {
        Course course = on("2026-02-03");
        assertThat(course.taught()).extracting(Stage::skill).containsExactly("T06", "T05");
        assertThat(course.coming()).containsExactly(
                new Stage("T08", day("2026-02-04"), null, null, day("2026-02-16"), 3));
    }

    @Test
    void aClassWithoutPacingHasNoCourse() {
        Course none = Course.on(day("2026-01-27"), new Pacing(List.of()), new SchoolCalendar(List.of()));
        assertThat(none.taught()).isEmpty();
        assertThat(none.coming()).isEmpty();
    }
}
