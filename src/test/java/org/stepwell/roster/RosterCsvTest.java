package org.stepwell.roster;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.platform.csv.Parsed;

class RosterCsvTest {
    @Test
    void takesIdsAndNamesAsTheyAre() {
        Parsed<RosterRow> parsed = read("=7/\u00e9 \u4e2d,Nh\u01b0,\"O'Hara, Jr\",1,1B,2026-01-05,\n");
        assertThat(parsed.problems()).isEmpty();
        assertThat(parsed.rows()).containsExactly(new RosterRow("=7/\u00e9 \u4e2d", "Nh\u01b0", "O'Hara, Jr", "1", "1B",
                LocalDate.of(2026, 1, 5), null));
        assertThat(read(RosterCsv.write(parsed.rows()).lines().skip(1).findFirst().orElseThrow() + "\n"))
                .isEqualTo(parsed);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {",Ana,,1,1B,,|child", "q1,,,1,1B,,|given_name", "q1,Ana,,1,1B,May,|start",
        "q1,Ana,,1,1B,2026-05-01,2026-04-31|end", "q1,Ana,,1,1B,2026-05-01,2026-04-30|''",
        "q\t1,Ana,,1,1B,,|''"})
    void namesTheLineOfABadRowAndItsColumnWhereItIsOne(String row, String column) {
        assertThat(read(row + "\n").problems()).singleElement().satisfies(problem -> {
            assertThat(problem.line()).isEqualTo(2);
            assertThat(problem.column()).isEqualTo(column);
        });
    }

    @Test
    void takesAChildTwiceOnlyForDifferentStays() {
        assertThat(read("q1,Ana,,1,1B,2026-01-05,2026-02-06\nq1,Ana,,1,1B,2026-03-02,\n").rows()).hasSize(2);
        assertThat(read("q1,Ana,,1,1B,,\nq1,Ann,,1,1B,,\n").problems()).singleElement().asString()
                .contains("line 3", "line 2");
    }

    @Test
    void writesTheSampleSoThatItComesBackEqual() throws Exception {
        Parsed<RosterRow> sample = RosterCsv.read(Files.readAllBytes(Path.of("sample-class/roster.csv")));
        assertThat(sample.problems()).isEmpty();
        assertThat(RosterCsv.read(RosterCsv.write(sample.rows()).getBytes(StandardCharsets.UTF_8))).isEqualTo(sample);
    }

    private static Parsed<RosterRow> read(String rows) {
        return RosterCsv.read(("child,given_name,family_name,grade,class,start,end\n" + rows)
                .getBytes(StandardCharsets.UTF_8));
    }
}
