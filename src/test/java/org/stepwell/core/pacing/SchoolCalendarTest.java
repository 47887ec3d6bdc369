package org.stepwell.core.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SchoolCalendarTest {
    private static LocalDate day(String text) {
        return LocalDate.parse(text);
    }

    @Test
    void countsAsOneByOneCountingDoes() {
        Random random = new Random(3);
        for (int round = 0; round < 500; round++) {
            List<SchoolCalendar.Break> breaks = new ArrayList<>();
            for (int n = random.nextInt(4); n > 0; n--) {
                LocalDate from = day("2025-12-20").plusDays(random.nextInt(60));
                breaks.add(new SchoolCalendar.Break(from, from.plusDays(random.nextInt(12)), "x"));
            }
            SchoolCalendar calendar = new SchoolCalendar(breaks);
            LocalDate from = day("2025-12-15").plusDays(random.nextInt(70));
            LocalDate to = from.plusDays(random.nextInt(60) - 5);
            int school = 0;
            int away = 0;
            for (LocalDate at = from.plusDays(1); !at.isAfter(to); at = at.plusDays(1)) {
                boolean weekend = at.getDayOfWeek().getValue() > 5;
                LocalDate on = at;
                boolean inBreak = breaks.stream().anyMatch(b -> !on.isBefore(b.from()) && !on.isAfter(b.to()));
                school += !weekend && !inBreak ? 1 : 0;
                away += !weekend && inBreak ? 1 : 0;
                assertThat(calendar.isSchoolDay(at)).isEqualTo(!weekend && !inBreak);
            }
            assertThat(calendar.schoolDaysBetween(from, to)).isEqualTo(school);
            assertThat(calendar.breakDaysBetween(from, to)).isEqualTo(away);
        }
    }

    @Test
    void runsComeInOrder() {
        SchoolCalendar calendar = new SchoolCalendar(
                List.of(new SchoolCalendar.Break(day("2026-01-07"), day("2026-01-12"), "snow")));
        assertThat(calendar.runs(day("2026-01-04"), day("2026-01-16")))
                .containsExactly(
                        new SchoolCalendar.Run(true, 2),
                        new SchoolCalendar.Run(false, 4),
                        new SchoolCalendar.Run(true, 4));
    }

    @Test
    void aWeekWithoutAnyLookIsABreakOnceItIsOver() {
        List<LocalDate> seen = List.of(day("2026-01-06"), day("2026-01-20"));
        SchoolCalendar open = new SchoolCalendar(List.of());
        assertThat(open.withInferredBreaks(seen, day("2026-01-15")).breaks()).isEmpty();
        assertThat(open.withInferredBreaks(seen, day("2026-01-23")).breaks())
                .extracting(SchoolCalendar.Break::from)
                .containsExactly(day("2026-01-12"));
    }

    @Test
    void goesBackBySchoolDays() {
        SchoolCalendar calendar = new SchoolCalendar(
                List.of(new SchoolCalendar.Break(day("2026-01-05"), day("2026-01-09"), "snow")));
        assertThat(calendar.minusSchoolDays(day("2026-01-14"), 3)).isEqualTo(day("2026-01-02"));
    }

    @Test
    void aBreakCannotEndBeforeItBegins() {
        assertThatThrownBy(() -> new SchoolCalendar.Break(day("2026-01-09"), day("2026-01-05"), "x"))
                .hasMessageContaining("2026-01-05");
    }
}
