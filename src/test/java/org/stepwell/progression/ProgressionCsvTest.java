package org.stepwell.progression;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.stepwell.core.progression.Progression;
import org.stepwell.platform.csv.Parsed;

class ProgressionCsvTest {
    private static final String NO_PHRASES = "skill,code,step,language,text,kind\n";

    @Test
    void writesTheSampleSoThatItComesBackEqual() throws Exception {
        Parsed<Progression> sample = ProgressionCsv.read(Files.readAllBytes(Path.of("sample-class/skills.csv")),
                Files.readAllBytes(Path.of("sample-class/phrases.csv")));
        assertThat(sample.problems()).isEmpty();
        Progression one = sample.rows().getFirst();
        assertThat(ProgressionCsv.read(bytes(ProgressionCsv.writeSkills(one)),
                bytes(ProgressionCsv.writePhrases(one)))).isEqualTo(sample);
    }

    @Test
    void readsANeedThatHoldsForALaterStepOnly() {
        Parsed<Progression> read = read("p,A,First,,\np,B,Second,A>=2;5:A>=3,\n");
        assertThat(read.problems()).isEmpty();
        assertThat(read.rows().getFirst().skill("B").orElseThrow().needs())
                .containsExactly(new Progression.Need(1, "A", 2), new Progression.Need(5, "A", 3));
    }

    @Test
    void refusesACircle() {
        assertThat(read("p,A,First,B>=3,\np,B,Second,A>=3,\n").problems()).singleElement().asString()
                .contains("circle", "A", "B");
    }

    @Test
    void findsACircleThatRunsThroughLowerSteps() {
        assertThat(read("p,A,First,2:B>=4,\np,B,Second,3:A>=5,\n").problems()).singleElement().asString()
                .contains("circle");
    }

    @Test
    void allowsSkillsThatNeedEachOtherAtDifferentSteps() {
        assertThat(read("p,A,First,5:B>=3,\np,B,Second,A>=2,\n").problems()).isEmpty();
    }

    @Test
    void namesAnUnknownSkillAndANeedThatCannotBeRead() {
        assertThat(read("p,A,First,Z>=2,\n").problems()).singleElement().asString().contains("Z");
        assertThat(read("p,A,First,,\np,B,Second,A=2,\n").problems()).anySatisfy(problem ->
                assertThat(problem.toString()).contains("line 3", "needs"));
    }

    private static Parsed<Progression> read(String skills) {
        return ProgressionCsv.read(bytes("progression,skill,title,needs,standards\n" + skills), bytes(NO_PHRASES));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
