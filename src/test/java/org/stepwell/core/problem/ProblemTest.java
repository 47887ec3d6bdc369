package org.stepwell.core.problem;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.stepwell.platform.csv.CsvRow;

class ProblemTest {
    private static final Locale SPANISH = Locale.forLanguageTag("es-US");
    /** A name given to a problem, a refusal (of this package, which takes text) or a bad cell (after its column). */
    private static final Pattern NAMED = Pattern.compile(
            "(?:Problem\\.of|new Refused)\\(\\s*\"([^\"]+)\"|new (?:CsvRow\\.)?Bad\\([^,\"]*(?:\"[^\"]*\")?,\\s*\"([^\"]+)\"");

    private static String text(Path source) {
        try {
            return Files.readString(source, StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Else the reader gets a fault in place of what is wrong with the file. */
    @Test
    void everyProblemNamedInTheProgramCanBeSaid() throws IOException {
        List<String> named;
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            named = sources.filter(p -> p.toString().endsWith(".java")).map(ProblemTest::text)
                    .flatMap(t -> NAMED.matcher(t).results())
                    .map((MatchResult m) -> m.group(1) == null ? m.group(2) : m.group(1)).distinct().toList();
        }
        assertThat(named).hasSizeGreaterThan(60).contains("cell.date", "cell.control", "look.id-taken");
        for (String key : named) {
            assertThat(Problem.of(key, "a", "b", "c").in(SPANISH)).as(key).isNotBlank();
        }
    }

    @Test
    void isSaidInTheLanguageOfWhoeverReadsIt() {
        Problem wrong = Problem.of("cell.date", "9.3.2026");
        assertThat(wrong).hasToString("\"9.3.2026\" is not a date like 2026-03-09");
        assertThat(wrong.in(SPANISH)).contains("9.3.2026", "fecha");
        assertThat(wrong.in(Locale.GERMAN)).isEqualTo(wrong.toString());
    }

    @Test
    void aProblemWithinAnotherIsSaidInTheSameLanguage() {
        Problem inner = Problem.of("look.help");
        Problem outer = Problem.of("cell", "cube", inner);
        assertThat(outer.in(SPANISH)).contains(inner.in(SPANISH)).doesNotContain(inner.toString());
        assertThat(outer.toString()).contains(inner.toString());
    }

    @Test
    void bracesAndQuotesInAValueStayAsTheyAre() {
        assertThat(Problem.of("cell.date", "{0} it's 1,000").toString()).contains("{0} it's 1,000");
    }

    @Test
    void anExceptionWithoutAProblemSpeaksItsOwnWords() {
        assertThat(Problem.of(new IllegalStateException("as it is")).in(SPANISH)).isEqualTo("as it is");
        CsvRow.Bad bad = new CsvRow.Bad("step", "cell.step", "9");
        assertThat(bad).hasMessage(bad.problem().toString());
        assertThatThrownBy(() -> new Refused("no.such.text")).isInstanceOf(MissingResourceException.class);
    }
}
