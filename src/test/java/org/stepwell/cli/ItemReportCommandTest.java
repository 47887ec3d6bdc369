package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ItemReportCommandTest {
    @TempDir
    Path folder;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void printsNothingButJsonAndNamesTheSkills() throws IOException {
        assertThat(run("child,a,b,c\n#skill,T01,T02,\nc1,1,1,1\nc2,1,0,\nc3,0,0,0\n")).isZero();
        JsonNode report = JsonMapper.shared().readTree(out.toString());
        assertThat(report.get("n").asInt()).isEqualTo(3);
        assertThat(report.get("items_count").asInt()).isEqualTo(3);
        assertThat(report.get("items").get(1).get("skill").asString()).isEqualTo("T02");
        assertThat(report.get("items").get(2).get("skill").isNull()).isTrue();
        assertThat(report.get("items").get(2).get("p").asDouble()).isEqualTo(0.5);
        assertThat(report.get("items").get(2).get("not_reached").asInt()).isEqualTo(1);
    }

    @Test
    void namesEveryBadMarkRow() throws IOException {
        assertThat(run("child,a,b\nc1,1,2\nc2,x,0\nc3,1,0\n")).isEqualTo(1);
        assertThat(err.toString()).contains("line 2, column b", "line 3, column a");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void ignoresColumnsThatAreNoItemsAndARowThatStandsTwice() throws IOException {
        assertThat(run("child,i01,name,i02\nc1,1,Ana,0\nc2,0,Ben,0\nc1,1,Ana,0\n")).isZero();
        assertThat(err.toString()).contains("column name is unknown and ignored");
        JsonNode report = JsonMapper.shared().readTree(out.toString());
        assertThat(report.get("n").asInt()).isEqualTo(2);
        assertThat(report.get("items")).extracting(item -> item.get("id").asString()).containsExactly("i01", "i02");
    }

    @Test
    void refusesTwoDifferentRowsOfOneChild() throws IOException {
        assertThat(run("child,i01,i02\nc1,1,0\nc1,1,1\n")).isEqualTo(1);
        assertThat(err.toString()).contains("line 3, stands on line 2 already with other content");
    }

    @Test
    void saysThatAFileNamesNoItems() throws IOException {
        assertThat(run("child\nc1\n")).isEqualTo(1);
        assertThat(err.toString()).contains("no items");
    }

    private int run(String text) throws IOException {
        CommandLine line = Cli.line();
        line.setOut(new PrintWriter(out));
        line.setErr(new PrintWriter(err));
        return line.execute("item-report", Files.writeString(folder.resolve("responses.csv"), text).toString());
    }
}
