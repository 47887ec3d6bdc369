package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stepwell.platform.csv.CsvTable;
import picocli.CommandLine;

class GroupsCommandTest {
    private static final String HEADER = "child,tier,focus_skill,estimate,last_group\n";

    @TempDir
    private Path folder;
    private final StringWriter err = new StringWriter();

    private int run(String children, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("children.csv"), children);
        CommandLine line = Cli.line().setErr(new PrintWriter(err)).setOut(new PrintWriter(new StringWriter()));
        String[] all = new String[4 + more.length];
        all[0] = "groups";
        all[1] = file.toString();
        all[2] = "--out";
        all[3] = out().toString();
        System.arraycopy(more, 0, all, 4, more.length);
        return line.execute(all);
    }

    private Path out() {
        return folder.resolve("groups.csv");
    }

    private List<String> lines() throws IOException {
        return Files.readAllLines(out());
    }

    @Test
    void writesChildGroupAndReason() throws IOException {
        assertThat(run(HEADER + "b,support,T05,1.5,\na,extension,T08,5,\nd,extension,T08,4,\nc,support,T05,2,\n",
                "--groups", "2")).isZero();
        assertThat(lines()).containsExactly("child,group,reason",
                "a,1,\"T08 is next, from step five on. Everybody at the table works on it, from nearly the same step.\"",
                "d,1,\"T08 is next, from step four on. Everybody at the table works on it, from nearly the same step.\"",
                "b,2,\"T05 is next, from step one on. Everybody at the table works on it, from nearly the same step.\"",
                "c,2,\"T05 is next, from step two on. Everybody at the table works on it, from nearly the same step.\"");
    }

    @Test
    void theSameClassInAnyOrderGivesTheSameBytes() throws IOException {
        List<String> rows = List.of("k1,support,T05,2,1", "k2,,T06,,2", "k3,on_level,,3,2", "k4,on_level,T05,3,1",
                "\"x,y:z\",extension,T05,5,1");
        assertThat(run(HEADER + String.join("\n", rows) + "\n", "--groups", "2", "--apart", "k1:k2")).isZero();
        String first = Files.readString(out());
        assertThat(run("\uFEFF" + HEADER + String.join("\r\n", rows.reversed()), "--groups", "2", "--apart", "k2:k1"))
                .isZero();
        assertThat(Files.readString(out())).isEqualTo(first).contains("\"x,y:z\"");
    }

    @Test
    void impossibleWishesEndWithOneNameBothAndWriteNothing() throws IOException {
        assertThat(run(HEADER + "Ana,,,,\nLeo,,,,\nKim,,,,\n", "--groups", "2", "--apart", "Ana:Leo", "--together",
                "Leo:Ana")).isEqualTo(1);
        assertThat(err.toString()).isEqualTo("Ana and Leo are to be both together and apart.\n");
        assertThat(out()).doesNotExist();
    }

    @Test
    void anUnknownChildInAWishIsNamed() throws IOException {
        assertThat(run(HEADER + "Ana,,,,\nLeo,,,,\n", "--groups", "2", "--apart", "Ana:Zoe,Max:Leo")).isEqualTo(1);
        assertThat(err.toString()).contains("Zoe is named in a wish", "Max is named in a wish");
        assertThat(out()).doesNotExist();
    }

    @Test
    void everyBadRowIsNamedAndTheRestTakenWhenAsked() throws IOException {
        String file = HEADER + "Ana,high,,,\nLeo,,T05,9,\nKim,,T05,2,\nKim,,T05,3,\n,,,,\nMax,,T05,nan,\n";
        assertThat(run(file, "--groups", "1")).isEqualTo(1);
        assertThat(err.toString()).contains("line 2, column tier", "line 3, column estimate", "line 5",
                "line 6, column child", "line 7, column estimate", "5 problems");
        assertThat(out()).doesNotExist();
        assertThat(run(file, "--groups", "1", "--skip-bad-rows")).isZero();
        assertThat(lines()).hasSize(2).last().asString().startsWith("Kim,1,");
    }

    @Test
    void usageErrorsEndWithTwo() throws IOException {
        for (String[] wrong : new String[][] {{}, {"--groups", "0"}, {"--groups", "x"},
            {"--groups", "2", "--apart", "AB"}, {"--groups", "1", "--apart", "Ana:Leo:Kim"},
            {"--groups", "2", "--nonsense"}}) {
            assertThat(run(HEADER + "Ana,,,,\nLeo,,,,\nKim,,,,\n", wrong)).as(String.join(" ", wrong)).isEqualTo(2);
        }
        assertThat(err.toString().lines()).hasSize(6);
        assertThat(out()).doesNotExist();
    }

    @Test
    void fewerChildrenThanGroupsLeavesGroupsEmptyAndSaysSo() throws IOException {
        assertThat(run(HEADER + "Ana,,,,\nLeo,,,,\n", "--groups", "5")).isZero();
        assertThat(lines()).hasSize(3);
        assertThat(err.toString()).contains("groups 3 to 5 stay empty");
    }

    @Test
    void aFileWithoutChildrenIsBadData() throws IOException {
        assertThat(run(HEADER, "--groups", "2")).isEqualTo(1);
        assertThat(err.toString()).contains("0 children");
    }

    @Test
    void fortyChildrenAreGroupedAndNoReasonNamesAnother() throws IOException {
        StringBuilder file = new StringBuilder(HEADER);
        for (int i = 1; i <= 40; i++) {
            file.append(i).append(",,T0").append(4 + i % 4).append(',').append(1 + i % 5).append(',').append(i % 3)
                    .append('\n');
        }
        assertThat(run(file.toString(), "--groups", "8")).isZero();
        var rows = CsvTable.read(Files.readAllBytes(out()), List.of("child", "group", "reason"), List.of())
                .parse(row -> List.of(row.text("child"), row.text("group"), row.text("reason")), row -> row.get(0))
                .rows();
        assertThat(rows).hasSize(40);
        for (List<String> row : rows) {
            assertThat(row.get(2)).doesNotContainPattern("(?<!\\w)[0-9]+(?!\\w)");
        }
    }
}
