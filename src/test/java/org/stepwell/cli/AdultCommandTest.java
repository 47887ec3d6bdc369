package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class AdultCommandTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"adult|adult add", "adult add|SIGN-IN", "adult add ana@hill|--name",
        "adult add ana@hill --name Ana --role boss|teacher, co_teacher, aide, specialist, lead", "adult reset|SIGN-IN",
        "adult dance|dance"})
    void saysInOneLineWhatIsWrongWithTheCall(String call, String named) {
        StringWriter err = new StringWriter();
        CommandLine line = Cli.line();
        line.setErr(new PrintWriter(err));
        assertThat(line.execute(call.split(" "))).isEqualTo(2);
        assertThat(err.toString().lines()).singleElement().asString().contains(named);
    }
}
