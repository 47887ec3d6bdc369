package org.stepwell.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LauncherProcessTest {
    private static final List<String> TOOLS = List.of("cat", "dirname", "find", "grep", "head", "mkdir", "mv",
            "readlink", "rm", "sed", "sh", "sleep");

    @TempDir
    Path folder;

    private record Said(int exit, String text) {
    }

    /** A path with the tools the launcher is written in and nothing else. */
    private Path barePath() throws IOException {
        Path bare = Files.createDirectories(folder.resolve("bin"));
        for (String tool : TOOLS) {
            for (Path place : List.of(Path.of("/usr/bin"), Path.of("/bin"))) {
                if (Files.exists(place.resolve(tool)) && !Files.exists(bare.resolve(tool))) {
                    Path wrapper = Files.writeString(bare.resolve(tool),
                            "#!/bin/sh\nexec " + place.resolve(tool) + " \"$@\"\n");
                    assertThat(wrapper.toFile().setExecutable(true)).isTrue();
                }
            }
        }
        return bare;
    }

    private Said run(Path launcher, Map<String, String> environment, String... arguments) throws Exception {
        List<String> command = new ArrayList<>(List.of("/bin/sh", launcher.toString()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true).directory(folder.toFile());
        builder.environment().clear();
        builder.environment().putAll(environment);
        Process process = builder.start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Said(process.waitFor(), text);
    }

    @Test
    void namesThePackageOfAMissingBrowser() throws Exception {
        Said said = run(Path.of("stepwell").toAbsolutePath(),
                Map.of("PATH", barePath().toString(), "JAVA_HOME", System.getProperty("java.home")), "test");
        assertThat(said.exit()).isEqualTo(1);
        assertThat(said.text()).contains("chromium");
    }

    @Test
    void saysWhatToInstallWithoutAJdk() throws Exception {
        String text = Files.readString(Path.of("stepwell")).replace("/usr/lib/jvm/*", folder + "/none/*")
                .replace("/Library/Java/", folder + "/none/");
        Path launcher = Files.writeString(folder.resolve("stepwell"), text);
        Said said = run(launcher, Map.of("PATH", barePath().toString()));
        assertThat(said.exit()).isEqualTo(1);
        assertThat(said.text()).contains("JDK of version 25 or newer", "openjdk-25-jdk", "JAVA_HOME");
    }

    /** The real build writes generated files under src/main after the launcher has taken its stamp; so does this one. */
    @Test
    void buildsAgainOnlyWhenASourceChanged() throws Exception {
        Path launcher = Files.copy(Path.of("stepwell"), folder.resolve("stepwell"));
        Path source = Files.createDirectories(folder.resolve("src/main/java")).resolve("A.java");
        Files.writeString(source, "class A {}");
        Path bin = barePath();
        Path maven = Files.writeString(bin.resolve("mvn"), """
                #!/bin/sh
                echo built
                mkdir -p src/main/frontend/generated
                echo 1 > src/main/frontend/generated/imports.js
                echo 1 > target/stepwell-1.jar
                """);
        assertThat(maven.toFile().setExecutable(true)).isTrue();
        Instant past = Instant.now().minusSeconds(60);
        try (Stream<Path> all = Files.walk(folder.resolve("src"))) {
            for (Path path : all.toList()) {
                Files.setLastModifiedTime(path, FileTime.from(past));
            }
        }
        Map<String, String> environment = Map.of("PATH", bin.toString(), "JAVA_HOME",
                System.getProperty("java.home"));
        assertThat(run(launcher, environment, "--help").text()).contains("Building Stepwell", "built");
        Files.setLastModifiedTime(folder.resolve("target/stepwell.stamp"), FileTime.from(past.plusSeconds(30)));
        assertThat(run(launcher, environment, "--help").text()).doesNotContain("Building Stepwell");
        Files.setLastModifiedTime(source, FileTime.from(past.plusSeconds(40)));
        assertThat(run(launcher, environment, "--help").text()).contains("Building Stepwell", "built");
    }

    @Test
    void saysWhatToInstallWithoutMaven() throws Exception {
        Path launcher = Files.copy(Path.of("stepwell"), folder.resolve("stepwell"));
        Said said = run(launcher, Map.of("PATH", barePath().toString(), "JAVA_HOME", System.getProperty("java.home")));
        assertThat(said.exit()).isEqualTo(1);
        assertThat(said.text()).contains("Maven", "maven");
        assertThat(folder.resolve("target")).doesNotExist();
    }
}
