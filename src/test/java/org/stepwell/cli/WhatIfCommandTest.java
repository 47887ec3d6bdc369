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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.tier.RuleFile;
import picocli.CommandLine;

class WhatIfCommandTest {
    private static final String WEIGHED = "weighed " + RuleFile.shipped(RuleFile.WEIGHED).version();
    private static final Path SAMPLE = Path.of("sample-class");

    @TempDir
    private Path folder;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int replay(String name, String... more) {
        List<String> all = new ArrayList<>(List.of("replay", "--observations",
                SAMPLE.resolve("observations.csv").toString(), "--pacing", SAMPLE.resolve("pacing.csv").toString(),
                "--on", "2026-03-27,2026-04-17,2026-05-01,2026-05-08", "--out", folder.resolve(name).toString()));
        all.addAll(List.of(more));
        CommandLine line = Cli.line();
        line.setErr(new PrintWriter(err));
        line.setOut(new PrintWriter(out));
        return line.execute(all.toArray(String[]::new));
    }

    private List<List<String>> rows(String name) throws IOException {
        return Files.readAllLines(folder.resolve(name).resolve("what_if.csv")).stream().skip(1)
                .map(row -> List.of(row.split(",", 9))).toList();
    }

    @Test
    void leavesThePlainFilesAsTheyAreAndPrintsNothingUnasked() {
        assertThat(replay("plain")).isZero();
        assertThat(out.toString()).isEmpty();
        assertThat(folder.resolve("plain/what_if.csv")).doesNotExist();
        assertThat(replay("tried", "--what-if", "conventional")).isZero();
        for (String file : List.of("suggestions.csv", "estimates.csv")) {
            assertThat(folder.resolve("tried").resolve(file))
                    .hasSameBinaryContentAs(folder.resolve("plain").resolve(file));
        }
    }

    @Test
    void followsBothRulesAndSaysWhatWasDecidedBeside() throws IOException {
        assertThat(replay("weighed")).isZero();
        assertThat(replay("a", "--rules", "conventional", "--what-if", "weighed", "--decisions",
                SAMPLE.resolve("decisions.csv").toString())).isZero();
        List<String> then = Files.readAllLines(folder.resolve("weighed/suggestions.csv")).stream().skip(1)
                .map(row -> List.of(row.split(",", 5))).map(cells -> cells.get(0) + cells.get(1) + cells.get(3)).toList();
        List<List<String>> rows = rows("a");
        assertThat(rows.stream().map(row -> row.get(0) + row.get(1) + row.get(4)).toList()).isEqualTo(then);
        assertThat(rows.stream().filter(row -> row.get(0).equals("2026-03-27") && row.get(2).equals("support")).count())
                .as("two of the class were decided into support on that day").isEqualTo(2);
        assertThat(rows.stream().map(row -> row.get(5)).toList()).contains("decided");
        assertThat(out.toString()).contains("conventional 1: ", WEIGHED + ": ", "stand where it was decided");
    }

    @Test
    void triesAnotherThreshold() throws IOException {
        assertThat(replay("never", "--set", "more_help.chance_support=1", "--set", "enough.looks_at_any_skill=3")).isZero();
        assertThat(rows("never")).noneMatch(row -> row.get(4).equals("support"));
        assertThat(rows("never")).anyMatch(row -> row.get(3).equals("support"));
        assertThat(out.toString()).contains(WEIGHED + "+more_help.chance_support=1.0+enough.looks_at_any_skill=3.0: ");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "more_help=1 | is not of the form PLACE.MEASURE=N",
        "more_help.kinds=2 | rules weighed have no \"kinds\" under \"more_help\"",
        "most_help.looks=2 | under \"most_help\"",
        "more_help.luck=1 | luck is not a known measure",
        "more_help.chance_support=7 | chance_support 7.0 is not in 0 to 1",
        "more_help.chance_support=NaN | is not in 0 to 1",
        "more_help.chance_support=much | \"much\" is not a number",
        "enough.due_skills=1 | no tiers before two skills are due"
    })
    void saysWhatIsWrongWithAThreshold(String change, String told) {
        assertThat(replay("a", "--set", change)).isEqualTo(2);
        assertThat(err.toString().lines()).singleElement().asString().contains("--set " + change, told);
        assertThat(folder.resolve("a")).doesNotExist();
    }

    @Test
    void namesEveryBadLineOfARuleFileAndWritesNothing() throws IOException {
        Path mine = Files.writeString(folder.resolve("mine.txt"), RuleFile.shippedText(RuleFile.WEIGHED)
                .replace("enough looks_at_any_skill at least 2", "enough lookz at least 2")
                .replace("set free.step = 1", "set free.step = 9"));
        for (String option : List.of("--rules", "--what-if")) {
            assertThat(replay("a", option, mine.toString())).isEqualTo(1);
        }
        assertThat(err.toString()).contains("mine.txt:", "lookz is not a known measure", "free.step 9 is not in 1 to 5")
                .containsPattern("line \\d+: lookz").doesNotContain("\tat ");
        assertThat(folder.resolve("a")).doesNotExist();
    }

    @Test
    void namesBadDecisions() throws IOException {
        Path bad = Files.writeString(folder.resolve("d.csv"), "as_of,child,tier\n2026-03-27,q0601,red\n27.3.,q0602,\n");
        assertThat(replay("a", "--decisions", bad.toString())).isEqualTo(1);
        assertThat(err.toString()).contains("line 2", "tier \"red\" is not one of support, on_level, extension", "line 3");
        assertThat(folder.resolve("a")).doesNotExist();
    }
}
