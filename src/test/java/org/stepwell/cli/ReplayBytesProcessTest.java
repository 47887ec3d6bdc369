package org.stepwell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stepwell.Built;

/** The built program on machines set up otherwise: far time zones, digits and letters of other languages, charsets. */
class ReplayBytesProcessTest {
    private static final Path SAMPLE = Path.of("sample-class");

    @TempDir
    private Path folder;

    private void replay(String name, Map<String, String> environment, String... machine) throws Exception {
        List<String> command = Built.command(machine);
        command.addAll(List.of("replay", "--observations",
                SAMPLE.resolve("observations.csv").toString(), "--pacing", SAMPLE.resolve("pacing.csv").toString(),
                "--from", "2026-03-13", "--to", "2026-05-08", "--what-if", "conventional", "--out",
                folder.resolve(name).toString()));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectOutput(folder.resolve(name + ".out").toFile())
                .redirectError(folder.resolve(name + ".err").toFile());
        builder.environment().putAll(environment);
        assertThat(builder.start().waitFor()).as(Files.readString(folder.resolve(name + ".err"))).isZero();
    }

    @Test
    void theSameFilesOnEveryMachine() throws Exception {
        replay("plain", Map.of());
        replay("east", Map.of("TZ", "Pacific/Kiritimati", "LC_ALL", "C"), "-Duser.language=ar", "-Duser.country=EG",
                "-Duser.timezone=Pacific/Kiritimati", "-Dfile.encoding=ISO-8859-1", "-Dstdout.encoding=US-ASCII");
        replay("west", Map.of("TZ", "Pacific/Niue"), "-Duser.language=tr", "-Duser.country=TR",
                "-Duser.timezone=Pacific/Niue", "-Dfile.encoding=UTF-16");
        for (String file : List.of("suggestions.csv", "estimates.csv", "what_if.csv")) {
            same(folder.resolve("plain").resolve(file), folder.resolve("east").resolve(file));
            same(folder.resolve("plain").resolve(file), folder.resolve("west").resolve(file));
        }
        same(folder.resolve("plain.out"), folder.resolve("east.out"));
        same(folder.resolve("plain.out"), folder.resolve("west.out"));
    }

    private static void same(Path one, Path other) throws IOException {
        assertThat(Files.size(one)).isPositive();
        assertThat(other).hasSameBinaryContentAs(one);
    }
}
