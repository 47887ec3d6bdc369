package org.stepwell.core.trend;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;

class WeeklySeriesTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);

    @Test
    void takesTheMeanOfAWeekAndLeavesAWeekWithoutLooksOut() {
        assertThat(WeeklySeries.of(List.of(day(15, "T02", 4), day(4, "T02", 3), day(0, "T02", 2), day(6, "T02", 4))))
                .containsExactly(new WeeklySeries.Week(MONDAY, 3, 3),
                        new WeeklySeries.Week(MONDAY.plusWeeks(2), 4, 1));
        assertThat(WeeklySeries.of(List.of())).isEmpty();
    }

    @Test
    void countsTheDueSkillsOfAWeekOnceAndOnlyThoseSeen() {
        Pacing pacing = pacing(row("T01", 0, 3), row("T02", 0, 3), row("T03", 0, 3), row("T04", 21, 3));
        assertThat(UnitSeries.of(List.of(day(0, "T01", 2), day(2, "T01", 3), day(3, "T02", 2), day(3, "T04", 5),
                day(9, "T02", 3)), pacing))
                .containsExactly(new UnitSeries.Week(MONDAY, 1, 2), new UnitSeries.Week(MONDAY.plusWeeks(1), 1, 1));
        assertThat(UnitSeries.of(List.of(day(3, "T04", 5)), pacing)).isEmpty();
    }

    @Test
    void readsADayAgainstTheStepExpectedOnThatDay() {
        Pacing pacing = pacing(row("T01", 0, 3), row("T01", 7, 4));
        assertThat(UnitSeries.of(List.of(day(4, "T01", 3), day(8, "T01", 3)), pacing))
                .extracting(UnitSeries.Week::share).containsExactly(1.0, 0.0);
    }

    @Test
    void doesNotTakeObjectsOnTheTableForFailure() {
        Pacing pacing = pacing(row("T01", 0, 4), row("T02", 0, 4));
        DayStep hidden = new DayStep(MONDAY, "T01", 3, true, List.of());
        assertThat(UnitSeries.of(List.of(hidden, day(1, "T02", 4)), pacing))
                .containsExactly(new UnitSeries.Week(MONDAY, 1, 1));
    }

    private static DayStep day(int after, String skill, int step) {
        return new DayStep(MONDAY.plusDays(after), skill, step, false, List.of());
    }

    private static PacingRow row(String skill, int after, int expected) {
        return new PacingRow(skill, null, MONDAY.plusDays(after), expected);
    }

    private static Pacing pacing(PacingRow... rows) {
        return new Pacing(List.of(rows));
    }
}
