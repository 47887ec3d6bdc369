package org.stepwell.pacing;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar.Break;
import org.stepwell.platform.csv.Parsed;

class PacingFilesTest {
    @Test
    void readsAnEndOfTheExpectationAndAnUnsaidFirstDay() {
        Parsed<PacingRow> parsed = pacing("T02,,2026-03-09,3\nT02,2026-02-23,2026-04-06,\n");
        assertThat(parsed.problems()).isEmpty();
        assertThat(parsed.rows()).containsExactly(
                new PacingRow("T02", null, LocalDate.of(2026, 3, 9), 3),
                new PacingRow("T02", LocalDate.of(2026, 2, 23), LocalDate.of(2026, 4, 6), null));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"T02,,,3|due", "T02,,2026-02-30,3|due", "T02,,9.3.2026,3|due",
        "T02,soon,2026-03-09,3|taught_from", "T02,,2026-03-09,6|expected_step", ",,2026-03-09,3|skill"})
    void namesTheColumnOfABadCell(String row, String column) {
        assertThat(pacing(row + "\n").problems()).singleElement().satisfies(problem -> {
            assertThat(problem.line()).isEqualTo(2);
            assertThat(problem.column()).isEqualTo(column);
        });
    }

    @Test
    void refusesTwoExpectationsOfOneSkillFromOneDay() {
        assertThat(pacing("T02,,2026-03-09,3\nT02,,2026-03-09,4\n").problems()).singleElement().asString()
                .contains("line 3", "line 2");
        assertThat(pacing("T02,,2026-03-09,3\nT02,,2026-03-09,3\n").rows()).hasSize(1);
    }

    @Test
    void readsBreaksAndRefusesOneThatEndsBeforeItBegins() {
        assertThat(calendar("2026-04-06,2026-04-10,spring break\n").rows()).containsExactly(
                new Break(LocalDate.of(2026, 4, 6), LocalDate.of(2026, 4, 10), "spring break"));
        assertThat(calendar("2026-04-10,2026-04-06,spring break\n").problems()).singleElement().asString()
                .contains("line 2", "before");
    }

    @Test
    void writesTheSampleSoThatItComesBackEqual() throws Exception {
        Parsed<PacingRow> rows = PacingCsv.read(Files.readAllBytes(Path.of("sample-class/pacing.csv")));
        assertThat(rows.problems()).isEmpty();
        assertThat(PacingCsv.read(bytes(PacingCsv.write(rows.rows())))).isEqualTo(rows);
        Parsed<Break> breaks = CalendarCsv.read(Files.readAllBytes(Path.of("sample-class/calendar.csv")));
        assertThat(breaks.problems()).isEmpty();
        assertThat(CalendarCsv.read(bytes(CalendarCsv.write(breaks.rows())))).isEqualTo(breaks);
    }

    private static Parsed<PacingRow> pacing(String rows) {
        return PacingCsv.read(bytes("skill,taught_from,due,expected_step\n" + rows));
    }

    private static Parsed<Break> calendar(String rows) {
        return CalendarCsv.read(bytes("from,to,reason\n" + rows));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
