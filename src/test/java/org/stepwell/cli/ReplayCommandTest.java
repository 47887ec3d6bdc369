package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class ReplayCommandTest {
    private static final Path SAMPLE = Path.of("sample-class");

    @TempDir
    private Path folder;
    private final StringWriter err = new StringWriter();

    private int run(String... arguments) {
        CommandLine line = Cli.line();
        line.setErr(new PrintWriter(err));
        return line.execute(arguments);
    }

    private int replay(Path observations, String out, String... more) {
        List<String> all = new ArrayList<>(List.of("replay", "--observations", observations.toString(), "--pacing",
                SAMPLE.resolve("pacing.csv").toString(), "--out", folder.resolve(out).toString()));
        all.addAll(List.of(more));
        return run(all.toArray(String[]::new));
    }

    @Test
    void writesTheSameBytesOnEveryRun() throws IOException {
        assertThat(replay(SAMPLE.resolve("observations.csv"), "a", "--from", "2026-03-13", "--to", "2026-05-08"))
                .isZero();
        assertThat(replay(SAMPLE.resolve("observations.csv"), "b", "--from", "2026-03-13", "--to", "2026-05-08"))
                .isZero();
        for (String name : List.of("suggestions.csv", "estimates.csv")) {
            assertThat(folder.resolve("a").resolve(name)).hasSameBinaryContentAs(folder.resolve("b").resolve(name));
        }
        List<String> lines = Files.readAllLines(folder.resolve("a/suggestions.csv"));
        assertThat(lines.getFirst()).isEqualTo(
                "as_of,child,current_tier,suggested_tier,verdict,chance,looks,days,rule,reason");
        assertThat(lines).isSortedAccordingTo((x, y) -> x.startsWith("as_of") ? -1 : x.substring(0, 16)
                .compareTo(y.substring(0, 16)));
        assertThat(lines.getLast()).startsWith("2026-05-08,");
    }

    @Test
    void orderOfRowsDoesNotMatter() throws IOException {
        List<String> rows = new ArrayList<>(Files.readAllLines(SAMPLE.resolve("observations.csv")));
        List<String> turned = new ArrayList<>(rows.subList(1, rows.size()).reversed());
        turned.addFirst(rows.getFirst());
        Path file = Files.write(folder.resolve("turned.csv"), turned);
        replay(SAMPLE.resolve("observations.csv"), "a", "--on", "2026-05-01,2026-05-08");
        replay(file, "b", "--on", "2026-05-08,2026-05-01");
        assertThat(folder.resolve("a/suggestions.csv"))
                .hasSameBinaryContentAs(folder.resolve("b/suggestions.csv"));
    }

    @Test
    void knowsNothingOfLaterDays() throws IOException {
        List<String> early = Files.readAllLines(SAMPLE.resolve("observations.csv")).stream()
                .filter(row -> row.startsWith("id") || row.split(",")[1].compareTo("2026-04-18") < 0).toList();
        Path file = Files.write(folder.resolve("early.csv"), early);
        replay(SAMPLE.resolve("observations.csv"), "a", "--on", "2026-04-17");
        replay(file, "b", "--on", "2026-04-17");
        for (String name : List.of("suggestions.csv", "estimates.csv")) {
            assertThat(folder.resolve("a").resolve(name)).hasSameBinaryContentAs(folder.resolve("b").resolve(name));
        }
    }

    @Test
    void namesEveryBadRowAndWritesNothing() throws IOException {
        Path file = folder.resolve("bad.csv");
        Files.writeString(file, Files.readString(SAMPLE.resolve("observations.csv"))
                + "not-an-id,2026-03-09T09:42:37-05:00,q0614,T02,17,3,none,table,x,,,,\n"
                + "019cd30c-cb64-7417-89f6-6e768d16aaaa,2026-03-09T09:42:37-05:00,q0614,T02,17,9,none,table,x,,,,\n");
        assertThat(replay(file, "a", "--on", "2026-05-08")).isEqualTo(1);
        assertThat(err.toString()).contains("column id").contains("column step").contains("\"9\"");
        assertThat(folder.resolve("a")).doesNotExist();
        assertThat(replay(file, "b", "--on", "2026-05-08", "--skip-bad-rows")).isZero();
        replay(SAMPLE.resolve("observations.csv"), "c", "--on", "2026-05-08");
        assertThat(folder.resolve("b/suggestions.csv"))
                .hasSameBinaryContentAs(folder.resolve("c/suggestions.csv"));
    }

    @Test
    void answersAUsageErrorWithOneLineAndTwo() {
        assertThat(run("replay", "--observations", "x")).isEqualTo(2);
        assertThat(err.toString().lines()).hasSize(1);
        assertThat(run("dance")).isEqualTo(2);
    }

    @Test
    void saysHowADayIsWritten() {
        assertThat(replay(SAMPLE.resolve("observations.csv"), "a", "--on", "2026-02-30")).isEqualTo(2);
        assertThat(err.toString().lines()).singleElement().asString()
                .contains("'--on'", "\"2026-02-30\" is not a date like 2026-03-09").doesNotContain("java");
    }

    @Test
    void offersNoRestOfAFileWhoseHeaderDoesNotFit() throws IOException {
        Path file = Files.writeString(folder.resolve("bad.csv"), "id,child\n1,q0614\n");
        assertThat(replay(file, "a", "--on", "2026-05-08", "--skip-bad-rows")).isEqualTo(1);
        assertThat(err.toString()).contains("line 1, the header lacks observed_at").doesNotContain("take the rest");
        assertThat(folder.resolve("a")).doesNotExist();
    }
}
