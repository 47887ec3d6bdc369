package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class EraseCommandTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"erase|erase child SCHOOL-ID", "erase child|SCHOOL-ID",
        "erase child q1 --yes|family_asked", "erase child q1 --why whim|family_asked, retention_ended"})
    void saysInOneLineWhatIsWrongWithTheCall(String call, String named) {
        StringWriter err = new StringWriter();
        CommandLine line = Cli.line();
        line.setErr(new PrintWriter(err));
        assertThat(line.execute(call.split(" "))).isEqualTo(2);
        assertThat(err.toString().lines()).singleElement().asString().contains(named);
    }
}
