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

class TrendCommandTest {
    @TempDir
    Path folder;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void printsOneRowForEachSeries() throws IOException {
        assertThat(run("series,x,y\nb,1,3\nb,2,3.5\na,1,2\n")).isZero();
        assertThat(out.toString()).isEqualTo(
                "series,n,slope,intercept,se_slope,low95,high95,theil_sen,theil_low95,theil_high95,mann_kendall_s\n"
                        + "b,2,0.5,2.5,,,,0.5,,,1\na,1,,,,,,,,,0\n");
    }

    @Test
    void countsEqualPointsAsOftenAsTheyWereMeasured() throws IOException {
        run("series,x,y\na,0,2\na,0,2\na,3,5\n");
        assertThat(out.toString()).contains("\na,3,1.0,2.0,");
    }

    @Test
    void namesEveryBadRowAndTakesTheRestWhenAsked() throws IOException {
        String text = "series,x,y\na,1,2\na,two,3\na,3,\na,4,5\n";
        assertThat(run(text)).isEqualTo(1);
        assertThat(err.toString()).contains("line 3, column x", "line 4, column y");
        assertThat(out.toString()).isEmpty();
        assertThat(run(text, "--skip-bad-rows")).isZero();
        assertThat(out.toString()).contains("\na,2,1.0,1.0,");
    }

    @Test
    void saysInOneLineThatTheFileIsMissingFromTheCommand() {
        assertThat(execute("trend")).isEqualTo(2);
        assertThat(err.toString().lines()).hasSize(1);
    }

    private int run(String text, String... more) throws IOException {
        Path file = Files.writeString(folder.resolve("series.csv"), text);
        String[] arguments = new String[2 + more.length];
        arguments[0] = "trend";
        arguments[1] = file.toString();
        System.arraycopy(more, 0, arguments, 2, more.length);
        return execute(arguments);
    }

    private int execute(String... arguments) {
        CommandLine line = Cli.line();
        line.setOut(new PrintWriter(out));
        line.setErr(new PrintWriter(err));
        return line.execute(arguments);
    }
}
