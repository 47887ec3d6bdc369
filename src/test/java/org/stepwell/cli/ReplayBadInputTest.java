package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.tier.RuleFile;
import picocli.CommandLine;

/** What the person at the terminal is told about input that cannot be taken, and the code the command ends with. */
class ReplayBadInputTest {
    private static final String HEADER = "id,observed_at,child,skill,task,step,help,kind,observer,tags,note\n";
    private static final String LOOK =
            "019cd30c-cb64-7417-89f6-6e768d164400,2026-03-09T09:42:37-05:00,q1,T02,17,3,none,table,x,,\n";

    @TempDir
    private Path folder;
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void writeGoodFiles() throws IOException {
        file("looks", HEADER + LOOK);
        file("pacing", "skill,taught_from,due,expected_step\nT02,,2026-03-09,3\nT03,,2026-03-09,3\n");
        file("calendar", "from,to,reason\n2026-03-16,2026-03-20,break\n");
        file("rules", RuleFile.shippedText(RuleFile.CONVENTIONAL));
    }

    private void file(String name, String content) throws IOException {
        Files.write(folder.resolve(name), content.getBytes(StandardCharsets.UTF_8));
    }

    private int replay() {
        CommandLine line = Cli.line();
        line.setErr(new PrintWriter(err));
        return line.execute("replay", "--observations", path("looks"), "--pacing", path("pacing"), "--calendar",
                path("calendar"), "--rules", path("rules"), "--on", "2026-03-13", "--out", path("out"));
    }

    private String path(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void takesTheGoodFiles() {
        assertThat(replay()).as(err.toString()).isZero();
        assertThat(folder.resolve("out/suggestions.csv")).exists();
    }

    @ParameterizedTest
    @CsvSource({"looks, 1, cannot be read", "pacing, 1, cannot be read", "calendar, 1, cannot be read",
        "rules, 2, is neither a file nor one of conventional"})
    void aMissingFileIsNamed(String name, int code, String told) throws IOException {
        Files.delete(folder.resolve(name));
        refused(name, code, told);
    }

    @ParameterizedTest
    @CsvSource({"looks, the file is empty", "pacing, the file is empty", "calendar, the file is empty",
        "rules, key name is missing"})
    void anEmptyFileIsNamed(String name, String told) throws IOException {
        file(name, "");
        refused(name, 1, told);
    }

    @ParameterizedTest
    @CsvSource({"looks, the header lacks", "pacing, the header lacks", "calendar, the header lacks",
        "rules, line 1"})
    void aFileOfAnotherKindIsNamed(String name, String told) throws IOException {
        file(name, "what,ever\n1,2\n");
        refused(name, 1, told);
    }

    @ParameterizedTest
    @CsvSource({"looks", "pacing", "calendar"})
    void aFileInAnotherCharsetIsNamed(String name) throws IOException {
        byte[] good = Files.readAllBytes(folder.resolve(name));
        byte[] bad = java.util.Arrays.copyOf(good, good.length + 2);
        bad[good.length] = (byte) 0xe9;
        bad[good.length + 1] = '\n';
        Files.write(folder.resolve(name), bad);
        refused(name, 1, "UTF-8");
    }

    @ParameterizedTest
    @CsvSource({"looks", "pacing", "calendar", "rules"})
    void aFolderInPlaceOfAFileIsNamed(String name) throws IOException {
        Files.delete(folder.resolve(name));
        Files.createDirectory(folder.resolve(name));
        refused(name, 1, "cannot be read");
    }

    @Test
    void twoRowsForOneSkillAndDayAreNamed() throws IOException {
        file("pacing", "skill,taught_from,due,expected_step\nT02,,2026-03-09,3\nT02,,2026-03-09,4\n");
        refused("pacing", 1, "line 3");
    }

    @Test
    void aBreakThatEndsBeforeItBeginsIsNamed() throws IOException {
        file("calendar", "from,to,reason\n2026-03-20,2026-03-16,break\n");
        refused("calendar", 1, "line 2");
    }

    @Test
    void aResultFolderThatCannotBeIsNamed() throws IOException {
        file("out", "a file\n");
        assertThat(replay()).isEqualTo(1);
        assertThat(err.toString()).contains(path("out"), "cannot be written").doesNotContain("\tat ");
    }

    private void refused(String name, int code, String told) {
        assertThat(replay()).as(err.toString()).isEqualTo(code);
        assertThat(err.toString()).contains(path(name)).contains(told).doesNotContain("\tat ", "Exception");
        assertThat(folder.resolve("out")).doesNotExist();
    }
}
