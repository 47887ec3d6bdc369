package org.stepwell.platform.ui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.List;
import java.util.MissingResourceException;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.stepwell.core.wording.Language;

class WordsTest {
    private static final Path FILES = Path.of("src/main/resources/words");
    private static final Pattern LONE_QUOTE = Pattern.compile("(?<!')'(?!')");

    @Test
    void everyTextStandsInBothLanguagesWithTheSameGaps() throws IOException {
        List<Path> english = files();
        assertThat(english).isNotEmpty();
        for (Path file : english) {
            Properties here = read(file);
            Properties there = read(spanish(file));
            assertThat(there.keySet()).as("texts of %s and its Spanish", file).isEqualTo(here.keySet());
            for (String key : here.stringPropertyNames()) {
                assertThat(new MessageFormat(there.getProperty(key)).getFormatsByArgumentIndex().length)
                        .as("gaps of %s in %s", key, file)
                        .isEqualTo(new MessageFormat(here.getProperty(key)).getFormatsByArgumentIndex().length);
            }
        }
    }

    /** A single apostrophe vanishes in a message and takes the gaps after it along. */
    @Test
    void apostrophesAreDoubled() throws IOException {
        for (Path file : files()) {
            for (Path each : List.of(file, spanish(file))) {
                Properties texts = read(each);
                for (String key : texts.stringPropertyNames()) {
                    Matcher lone = LONE_QUOTE.matcher(texts.getProperty(key));
                    assertThat(lone.find()).as("%s in %s: write '' for an apostrophe", key, each).isFalse();
                }
            }
        }
    }

    @Test
    void everyTextIsUsedSomewhere() throws IOException {
        String program;
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            program = String.join("\n", sources.filter(p -> p.toString().endsWith(".java")).map(WordsTest::text).toList());
        }
        for (Path file : files()) {
            for (String key : read(file).stringPropertyNames()) {
                String family = key.contains(".") ? key.substring(0, key.lastIndexOf('.') + 1) : key;
                assertThat(program.contains('"' + key + '"') || program.contains('"' + family + '"'))
                        .as("%s of %s is asked for by name, or by a name that ends in a choice", key, file).isTrue();
            }
        }
    }

    @Test
    void gapsAreFilledByTheReadersLanguage() {
        assertThat(Words.of("shell", Language.SPANISH).say("sign-out")).isEqualTo("Cerrar sesión");
        assertThat(Words.of("shell", Language.ENGLISH).say("sign-out")).isEqualTo("Sign out");
        assertThat(Words.of("shell").say("sign-out")).isEqualTo("Sign out");
        assertThatThrownBy(() -> Words.of("shell").say("no-such-text")).isInstanceOf(MissingResourceException.class);
    }

    private static List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(FILES)) {
            return files.filter(file -> !file.toString().endsWith("_es.properties")).sorted().toList();
        }
    }

    private static Path spanish(Path english) {
        return english.resolveSibling(english.getFileName().toString().replace(".properties", "_es.properties"));
    }

    private static Properties read(Path file) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = new InputStreamReader(Files.newInputStream(file), StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
