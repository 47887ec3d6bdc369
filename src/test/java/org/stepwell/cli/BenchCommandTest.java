package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class BenchCommandTest {
    @ParameterizedTest
    @CsvSource({"sofa,decisions", "faults,./stepwell bench faults", "table,./stepwell bench table",
            "--count=-1,--count", "--seed=x,--seed"})
    void saysInOneLineWhatIsWrongWithTheCall(String argument, String named) {
        StringWriter err = new StringWriter();
        CommandLine line = Cli.line();
        line.setErr(new PrintWriter(err));
        assertThat(line.execute("bench", argument)).isEqualTo(2);
        assertThat(err.toString().lines()).singleElement().asString().contains(named);
    }
}
