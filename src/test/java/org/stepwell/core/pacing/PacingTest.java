package org.stepwell.core.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PacingTest {
    private static final SchoolCalendar CALENDAR = new SchoolCalendar(List.of());

    private static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    private static final Pacing PACING = new Pacing(List.of(
            new PacingRow("T05", null, day("2026-02-02"), 4),
            new PacingRow("T05", null, day("2026-01-19"), 3),
            new PacingRow("T06", day("2026-01-12"), day("2026-01-26"), 3),
            new PacingRow("T01", day("2025-10-06"), day("2025-10-20"), 3),
            new PacingRow("T01", null, day("2025-12-01"), null)));

    @Test
    void theLatestDueRowHolds() {
        assertThat(PACING.dueOn(day("2026-01-18"))).isEmpty();
        assertThat(PACING.dueOn(day("2026-01-19"))).isEqualTo(Map.of("T05", 3));
        assertThat(PACING.dueOn(day("2026-02-02"))).isEqualTo(Map.of("T05", 4, "T06", 3));
    }

    @Test
    void anEmptyStepEndsTheExpectation() {
        assertThat(PACING.dueOn(day("2025-11-30"))).isEqualTo(Map.of("T01", 3));
        assertThat(PACING.dueOn(day("2025-12-01"))).isEmpty();
    }

    @Test
    void teachingBeginsTenSchoolDaysBeforeTheFirstDueDayUnlessGiven() {
        assertThat(PACING.taughtFrom("T05", CALENDAR)).contains(day("2026-01-05"));
        assertThat(PACING.taughtFrom("T06", CALENDAR)).contains(day("2026-01-12"));
        assertThat(PACING.taughtFrom("T99", CALENDAR)).isEmpty();
    }

    @Test
    void theUnitBeginsWithItsFirstSkillNotYetEnded() {
        assertThat(PACING.unitStart(day("2025-11-01"), CALENDAR)).contains(day("2025-10-06"));
        assertThat(PACING.unitStart(day("2026-01-20"), CALENDAR)).contains(day("2026-01-05"));
        assertThat(new Pacing(List.of()).unitStart(day("2026-01-20"), CALENDAR)).isEmpty();
    }

    @Test
    void twoRowsOfASkillDueOnOneDayAreRefused() {
        List<PacingRow> rows = List.of(
                new PacingRow("T05", null, day("2026-01-19"), 3), new PacingRow("T05", null, day("2026-01-19"), 4));
        assertThatThrownBy(() -> new Pacing(rows)).hasMessageContaining("T05").hasMessageContaining("2026-01-19");
    }
}
