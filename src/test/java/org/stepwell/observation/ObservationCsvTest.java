package org.stepwell.observation;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.evidence.Look;
import org.stepwell.platform.csv.Parsed;

class ObservationCsvTest {
    private static final String HEADER = "id,observed_at,child,skill,task,step,help,kind,observer,tags,note\n";
    private static final String ID = "019cd30c-cb64-7417-89f6-6e768d16449a";
    private static final String GOOD = ID + ",2026-03-09T09:42:37-05:00,c1,T02,17,3,none,table,t,drew;said,\n";

    @Test
    void takesTheSameLookOnceWhenOnlyTheOrderOfItsTagsDiffers() {
        Parsed<Look> parsed = read(GOOD + GOOD.replace("drew;said", "said;drew"));
        assertThat(parsed.rows()).hasSize(1);
        assertThat(parsed.problems()).isEmpty();
    }

    @Test
    void refusesTheSameIdWithOtherContent() {
        Parsed<Look> parsed = read(GOOD + GOOD.replace(",17,3,", ",17,4,"));
        assertThat(parsed.rows()).singleElement().extracting(Look::step).isEqualTo(3);
        assertThat(parsed.problems()).singleElement().asString().contains("line 3", "line 2", "other content");
    }

    @ParameterizedTest
    @CsvSource({"17;3;,17;9;,step", "17;3;,17;2.5;,step", "none,some,help", "table,sofa,kind",
        "2026-03-09T09:42:37-05:00,2026-03-09 09:42,observed_at",
        "2026-03-09T09:42:37-05:00,2026-02-30T09:42:37Z,observed_at",
        "019cd30c-cb64,019cd30c,id", "019cd30c-cb64,019cd30ccb-64,id", "c1,,child", "c1,c\u0001d,child", "table,,kind"})
    void namesTheColumnOfABadCell(String good, String bad, String column) {
        String to = bad == null ? "" : bad.replace(';', ',');
        Parsed<Look> parsed = read(GOOD.replace(good.replace(';', ','), to));
        assertThat(parsed.rows()).isEmpty();
        assertThat(parsed.problems()).singleElement().satisfies(problem -> {
            assertThat(problem.line()).isEqualTo(2);
            assertThat(problem.column()).isEqualTo(column);
        });
    }

    @Test
    void takesANoteWithoutStepOrSkillButNoStepWithoutSkill() {
        assertThat(read(GOOD.replace("T02,17,3", ",,")).rows()).hasSize(1);
        assertThat(read(GOOD.replace("T02,17,3", ",17,3")).problems()).singleElement().asString().contains("skill");
    }

    @Test
    void refusesANoteThatIsTooLongAndSaysHowLongItMayBe() {
        String longest = "n".repeat(ObservationCsv.LONGEST_NOTE);
        assertThat(read(GOOD.replace("said,\n", "said," + longest + "\n")).rows()).hasSize(1);
        assertThat(read(GOOD.replace("said,\n", "said," + longest + "n\n")).problems()).singleElement().asString()
                .contains("line 2", "column note", "4001", "4000");
    }

    @Test
    void readsWhatALookReplacesAndWhetherItOnlyTakesBack() {
        String header = HEADER.replace("note\n", "note,withdrawn,replaces\n");
        String other = ID.replace("019c", "019d");
        Parsed<Look> parsed = ObservationCsv.read((header + GOOD.replace("said,\n", "said,,true," + other + "\n"))
                .getBytes(StandardCharsets.UTF_8));
        assertThat(parsed.rows()).singleElement().satisfies(look -> {
            assertThat(look.withdrawn()).isTrue();
            assertThat(look.replaces()).hasToString(other);
        });
        assertThat(ObservationCsv.read((header + GOOD.replace("said,\n", "said,,yes,\n"))
                .getBytes(StandardCharsets.UTF_8)).problems()).singleElement().asString().contains("column withdrawn");
    }

    @Test
    void writesTheSampleSoThatItComesBackEqual() throws Exception {
        Parsed<Look> sample = ObservationCsv.read(Files.readAllBytes(Path.of("sample-class/observations.csv")));
        assertThat(sample.problems()).isEmpty();
        assertThat(sample.rows()).isNotEmpty();
        byte[] again = ObservationCsv.write(sample.rows()).getBytes(StandardCharsets.UTF_8);
        assertThat(ObservationCsv.read(again)).isEqualTo(sample);
    }

    private static Parsed<Look> read(String rows) {
        return ObservationCsv.read((HEADER + rows).getBytes(StandardCharsets.UTF_8));
    }
}
