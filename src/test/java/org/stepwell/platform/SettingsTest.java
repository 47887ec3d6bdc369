package org.stepwell.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SettingsTest {
    private static final Pattern NAME = Pattern.compile("STEPWELL_[A-Z_]*[A-Z]");

    @TempDir
    Path folder;

    private static Settings of(Map<String, String> environment) {
        return Settings.from(environment::get);
    }

    @Test
    void theExampleFileListsEverySettingWithItsDefaultAndNoOther() throws IOException {
        Map<String, String> listed = new HashMap<>();
        for (String line : Files.readAllLines(Path.of("deploy/app.env.example"))) {
            if (line.startsWith("#STEPWELL_")) {
                String[] parts = line.substring(1).split("=", 2);
                listed.put(parts[0], parts[1]);
            }
        }
        Map<String, String> known = new HashMap<>();
        for (Setting setting : Setting.values()) {
            known.put(setting.name(), setting.byDefault());
        }
        assertThat(listed).isEqualTo(known);
    }

    @Test
    void theProgramReadsNoSettingThatIsNotListed() throws IOException {
        List<String> known = Arrays.stream(Setting.values()).map(Enum::name).toList();
        try (Stream<Path> sources = Files.walk(Path.of("src/main/java"))) {
            for (Path source : sources.filter(path -> path.toString().endsWith(".java")).toList()) {
                List<String> named = NAME.matcher(Files.readString(source)).results().map(MatchResult::group)
                        .map(name -> name.replaceAll("_FILE$", "")).distinct().toList();
                assertThat(known).as(source.toString()).containsAll(named);
            }
        }
    }

    @Test
    void anEmptyEnvironmentIsThisMachineAloneOnPort8080() {
        Settings settings = of(Map.of());
        assertThat(settings.port()).isEqualTo(8080);
        assertThat(settings.bind()).isEqualTo("127.0.0.1");
        assertThat(settings.home().isAbsolute()).isTrue();
        assertThat(settings.home().getFileName()).hasToString(".stepwell");
        assertThat(settings.database()).isNull();
        assertThat(settings.tls()).isNull();
        assertThat(settings.sample()).isTrue();
    }

    @Test
    void aSecretMayStandInAFile() throws IOException {
        Path file = Files.writeString(folder.resolve("secret"), "quiet pebble\n");
        assertThat(of(Map.of("STEPWELL_SAMPLE_PASSWORD_FILE", file.toString())).samplePassword())
                .isEqualTo("quiet pebble");
        assertThatThrownBy(() -> of(Map.of("STEPWELL_SAMPLE_PASSWORD_FILE", file.toString(),
                "STEPWELL_SAMPLE_PASSWORD", "other"))).isInstanceOf(StartProblem.class)
                .hasMessageContaining("Keep one of them");
        assertThatThrownBy(() -> of(Map.of("STEPWELL_SAMPLE_PASSWORD_FILE", folder.resolve("none").toString())))
                .isInstanceOf(StartProblem.class).hasMessageContaining("cannot be read");
    }

    @ParameterizedTest
    @CsvSource({"STEPWELL_PORT, eighty", "STEPWELL_PORT, 65536", "STEPWELL_PORT, -1", "STEPWELL_SAMPLE, yes",
            "STEPWELL_DB_URL, postgres://here/db", "STEPWELL_DB_URL, jdbc:postgresql://here/db",
            "STEPWELL_TLS_KEY, web.key", "STEPWELL_PROXY, proxy.example", "STEPWELL_PROXY, 10.0.0.0/8"})
    void aValueThatCannotBeUsedIsNamed(String name, String value) {
        assertThatThrownBy(() -> of(Map.of(name, value))).isInstanceOf(StartProblem.class).hasMessageContaining(name);
    }

    @Test
    void neverPrintsASecret() {
        Settings settings = of(Map.of("STEPWELL_DB_URL", "jdbc:postgresql://here/db", "STEPWELL_DB_USER", "app",
                "STEPWELL_DB_PASSWORD", "quiet-pebble", "STEPWELL_SAMPLE_PASSWORD", "loud-pebble"));
        assertThat(settings.toString() + settings.database()).doesNotContain("pebble");
    }
}
