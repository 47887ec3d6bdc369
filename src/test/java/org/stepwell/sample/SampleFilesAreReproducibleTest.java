package org.stepwell.sample;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SampleFilesAreReproducibleTest {
    private static final Path SAMPLE = Path.of("sample-class");
    private static final List<String> BY_HAND = List.of("skills.csv", "phrases.csv");

    @TempDir
    Path folder;

    @Test
    void theSameSeedGivesTheSameBytes() throws Exception {
        Files.copy(SAMPLE.resolve("seed.txt"), folder.resolve("seed.txt"));
        make();
        List<String> names = madeFiles();
        assertTrue(names.contains("observations.csv"), names.toString());
        for (String name : names) {
            assertArrayEquals(
                    Files.readAllBytes(SAMPLE.resolve(name)),
                    Files.readAllBytes(folder.resolve(name)),
                    name + " differs from what the generator writes: run it again");
        }
        assertEquals(madeFiles(SAMPLE), names, "every generated file is kept, and nothing else");
    }

    @Test
    void anotherSeedGivesOtherLooks() throws Exception {
        Files.writeString(folder.resolve("seed.txt"), "1\n");
        make();
        assertNotEquals(
                Files.readString(SAMPLE.resolve("observations.csv")),
                Files.readString(folder.resolve("observations.csv")));
        assertEquals(
                Files.readString(SAMPLE.resolve("roster.csv")), Files.readString(folder.resolve("roster.csv")));
    }

    private void make() throws Exception {
        Files.copy(SAMPLE.resolve("phrases.csv"), folder.resolve("phrases.csv"));
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        SAMPLE.resolve("MakeSampleClass.java").toString(),
                        folder.toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertTrue(process.waitFor(2, TimeUnit.MINUTES), "the generator did not end");
        assertEquals(0, process.exitValue(), said);
    }

    private List<String> madeFiles() throws IOException {
        return madeFiles(folder);
    }

    private static List<String> madeFiles(Path where) throws IOException {
        try (Stream<Path> files = Files.list(where)) {
            return files.map(f -> f.getFileName().toString())
                    .filter(n -> n.endsWith(".csv") || n.endsWith(".properties"))
                    .filter(n -> !BY_HAND.contains(n))
                    .sorted()
                    .toList();
        }
    }
}
