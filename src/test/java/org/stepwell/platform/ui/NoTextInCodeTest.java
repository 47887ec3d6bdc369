package org.stepwell.platform.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.stepwell.core.wording.Language;

/** What a screen says stands in the files of two languages, never in code. */
class NoTextInCodeTest {
    private static final Path SOURCES = Path.of("src/main/java/org/stepwell");
    private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/|//[^\n]*", Pattern.DOTALL);
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*)\"");
    /** A capitalized word at the start, or two words side by side. */
    private static final Pattern SPOKEN =
            Pattern.compile("^\\P{L}*\\p{Lu}\\p{Ll}+|\\p{L}{2,},? \\p{L}{2,}");
    /** Names that are the same in both: of the program and the languages, weekday and month patterns, and names of properties of pages. */
    private static final Pattern NAMES = Pattern.compile("( · )?Stepwell|[EMdahms:, 'de.]+|[A-Z][a-z]+(-[A-Z][a-z]+)*Site|"
            + "SameSite|Lax|NullAway[A-Za-z.]*|English|Español|width=device-width, initial-scale=1");
    private static final Pattern MENU = Pattern.compile("@Menu\\([^)]*title = \"([^\"]*)\"");

    private static List<Path> screens() {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            return files.filter(f -> f.toString().endsWith(".java"))
                    .filter(f -> f.getParent().endsWith("ui") || f.getParent().endsWith("org/stepwell/trend")).toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static String code(Path file) {
        try {
            return COMMENT.matcher(Files.readString(file)).replaceAll("");
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    static List<String> spoken(String code) {
        List<String> found = new ArrayList<>();
        Matcher literal = LITERAL.matcher(code);
        while (literal.find()) {
            String text = literal.group(1);
            boolean markup = text.contains("=\\\"") || text.startsWith("<") || text.startsWith("@");
            if (!markup && SPOKEN.matcher(text).find() && !NAMES.matcher(text).matches()) {
                found.add(text);
            }
        }
        return found;
    }

    @Test
    void noScreenHoldsASentenceOfItsOwn() {
        List<String> found = new ArrayList<>();
        for (Path file : screens()) {
            spoken(code(file)).forEach(text -> found.add(SOURCES.relativize(file) + ": \"" + text + "\""));
        }
        assertThat(found).as("move it to src/main/resources/words, in both languages").isEmpty();
    }

    @Test
    void aSentenceInCodeWouldBeFound() {
        assertThat(spoken("add(new H1(\"Class map\")); say(\"class.map\"); addClassName(\"sheet\");"))
                .containsExactly("Class map");
        assertThat(spoken("Parts.soft(\"Nobody today.\" + \", seen by\")")).containsExactly("Nobody today.", ", seen by");
    }

    @Test
    void everyScreenIsNamedInBothLanguagesOnTheBarAndOnItsTab() {
        int named = 0;
        for (Path file : screens()) {
            String code = code(file);
            assertThat(code).as("%s: give the title by getPageTitle, from the texts", file).doesNotContain("@PageTitle(");
            Matcher menu = MENU.matcher(code);
            while (menu.find()) {
                named++;
                String title = menu.group(1);
                assertThat(title).as("%s: FEATURE.text", file).matches("[a-z-]+\\.[a-z.-]+");
                for (Language language : Language.values()) {
                    assertThat(Words.of(title.substring(0, title.indexOf('.')), language)
                            .say(title.substring(title.indexOf('.') + 1))).isNotBlank();
                }
            }
        }
        assertThat(named).isGreaterThan(3);
    }
}
