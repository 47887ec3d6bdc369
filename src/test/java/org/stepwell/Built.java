package org.stepwell;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import org.springframework.util.FileSystemUtils;

/**
 * The built program as processes of tests start it: unpacked beside its archive as the launcher does, and with the
 * quick compiler alone, since each of them lives for a minute or two.
 */
public final class Built {
    private Built() {}

    /** The start of a command line, to be followed by what the program is to do. */
    public static List<String> command(String... options) {
        List<String> words = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
        words.addAll(List.of(options));
        words.addAll(List.of("-jar", program().toString()));
        return words;
    }

    /** The unpacked program; made at the first use after a build. */
    public static synchronized Path program() {
        Path archive = Path.of(System.getProperty("stepwell.jar")).toAbsolutePath();
        try {
            Path folder = archive.resolveSibling("program-" + digest(archive));
            Path program = folder.resolve(archive.getFileName());
            if (!Files.exists(program)) {
                Path fresh = Files.createTempDirectory(archive.getParent(), "program");
                Process unpacking = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Djarmode=tools", "-jar", archive.toString(), "extract", "--force", "--destination",
                        fresh.toString()).redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
                if (unpacking.waitFor() != 0) {
                    throw new IllegalStateException("cannot unpack " + archive);
                }
                moveUnlessThere(fresh, folder);
            }
            return program;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(stopped);
        }
    }

    /** Two test processes may unpack at once; the first to be ready counts. */
    private static void moveUnlessThere(Path fresh, Path folder) throws IOException {
        try {
            Files.move(fresh, folder);
        } catch (FileAlreadyExistsException | DirectoryNotEmptyException other) {
            FileSystemUtils.deleteRecursively(fresh);
        }
    }

    /** By its bytes: a build that can be repeated gives every archive the same time. */
    private static String digest(Path archive) throws IOException {
        try (CheckedInputStream in = new CheckedInputStream(Files.newInputStream(archive), new CRC32())) {
            in.transferTo(OutputStream.nullOutputStream());
            return Long.toHexString(in.getChecksum().getValue()) + "-" + Files.size(archive);
        }
    }
}
