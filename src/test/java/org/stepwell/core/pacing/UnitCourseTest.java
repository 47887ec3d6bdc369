package org.stepwell.core.pacing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stepwell.core.pacing.SchoolCalendar.Break;

class UnitCourseTest {
    private static final LocalDate WEDNESDAY = LocalDate.of(2026, 3, 4);
    private static final SchoolCalendar CALENDAR = new SchoolCalendar(List.of(
            new Break(LocalDate.of(2026, 3, 16), LocalDate.of(2026, 3, 20), "break")));

    private static final List<PacingRow> ROWS = List.of(
            new PacingRow("T05", LocalDate.of(2026, 2, 2), LocalDate.of(2026, 3, 2), 3),
            new PacingRow("T05", LocalDate.of(2026, 2, 2), LocalDate.of(2026, 3, 13), 4),
            new PacingRow("T06", LocalDate.of(2026, 3, 5), LocalDate.of(2026, 3, 9), 3),
            new PacingRow("T07", null, LocalDate.of(2026, 3, 10), null));

    @Test
    void movesWhatIsToComeAndLeavesWhatHolds() {
        assertThat(UnitCourse.moved(ROWS, WEDNESDAY, 1, CALENDAR)).containsExactly(
                new PacingRow("T05", LocalDate.of(2026, 2, 2), LocalDate.of(2026, 3, 2), 3),
                new PacingRow("T05", LocalDate.of(2026, 2, 2), LocalDate.of(2026, 3, 23), 4),
                new PacingRow("T06", LocalDate.of(2026, 3, 6), LocalDate.of(2026, 3, 10), 3),
                new PacingRow("T07", null, LocalDate.of(2026, 3, 11), null));
    }

    @Test
    void aDayBackGivesTheSameRows() {
        assertThat(UnitCourse.moved(UnitCourse.moved(ROWS, WEDNESDAY, 2, CALENDAR), WEDNESDAY, -2, CALENDAR))
                .isEqualTo(ROWS);
    }

    @Test
    void bringsNothingNearerThanTomorrowAndLetsTheLaterOfTwoRowsHold() {
        List<PacingRow> near = UnitCourse.moved(List.of(
                new PacingRow("T06", null, LocalDate.of(2026, 3, 6), 3),
                new PacingRow("T06", null, LocalDate.of(2026, 3, 9), 4)), WEDNESDAY, -5, CALENDAR);
        assertThat(near).containsExactly(new PacingRow("T06", null, LocalDate.of(2026, 3, 5), 4));
    }

    @Test
    void projectsARangeOverWeekendsAndBreaks() {
        UnitCourse.End end = new UnitCourse(5, 0, 0).end(WEDNESDAY, CALENDAR);
        assertThat(end.early()).isEqualTo(LocalDate.of(2026, 3, 11));
        assertThat(end.asSoFar()).isEqualTo(end.early());
        assertThat(end.late()).isEqualTo(LocalDate.of(2026, 3, 23));
    }

    /** Wilson's upper end for 3 of 15 is .452 by R's prop.test without correction (value from memory). */
    @Test
    void lateIsAsOftenAsTheUpperEndOfWilsonAllows() {
        UnitCourse.End end = new UnitCourse(10, 15, 3).end(WEDNESDAY, new SchoolCalendar(List.of()));
        assertThat(end.early()).isEqualTo(LocalDate.of(2026, 3, 18));
        assertThat(end.asSoFar()).isEqualTo(LocalDate.of(2026, 3, 20));
        assertThat(end.late()).isEqualTo(LocalDate.of(2026, 3, 25));
    }

    @Test
    void endsTodayWhenNothingIsLeft() {
        UnitCourse.End end = new UnitCourse(0, 12, 4).end(WEDNESDAY, CALENDAR);
        assertThat(end).isEqualTo(new UnitCourse.End(WEDNESDAY, WEDNESDAY, WEDNESDAY));
    }
}
