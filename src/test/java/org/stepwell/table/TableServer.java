package org.stepwell.table;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.stepwell.Built;

/**
 * The built program with the sample class on a home of its own. It can be killed hard and started again, and so can
 * its PostgreSQL; both come back on the same files.
 */
final class TableServer implements AutoCloseable {
    static final String PASSWORD = "nine grey geese on the pond";

    private final Path home;
    private Process process;
    private int port;

    TableServer() throws IOException {
        home = Files.createTempDirectory("stepwell-faults");
        launch();
    }

    private void launch() throws IOException {
        List<String> command = Built.command();
        command.add("start");
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().keySet().removeIf(name -> name.startsWith("STEPWELL_"));
        builder.environment().put("STEPWELL_HOME", home.toString());
        builder.environment().put("STEPWELL_PORT", "0");
        builder.environment().put("STEPWELL_SAMPLE_PASSWORD", PASSWORD);
        builder.redirectError(ProcessBuilder.Redirect.appendTo(home.resolve("server.log").toFile()));
        process = builder.start();
        BufferedReader out = new BufferedReader(
                new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String line = out.readLine();
        while (line != null && !line.startsWith("http")) {
            line = out.readLine();
        }
        if (line == null) {
            throw new IllegalStateException("the server did not start: " + Files.readString(home.resolve("server.log")));
        }
        port = URI.create(line.strip()).getPort();
        Thread.ofVirtual().start(() -> out.lines().forEach(ignored -> { }));
    }

    int port() {
        return port;
    }

    Path home() {
        return home;
    }

    /** Ends the program without any order. */
    void kill() {
        process.destroyForcibly();
        waitForEnd();
    }

    /** Starts again on the same home after a kill. */
    void startAgain() {
        try {
            launch();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** Ends PostgreSQL and every process of it without any order; the program brings it back. */
    void killPostgres() {
        try {
            List<String> lines = Files.readAllLines(home.resolve("data/postmaster.pid"));
            ProcessHandle postmaster = ProcessHandle.of(Long.parseLong(lines.getFirst().strip())).orElseThrow();
            List<ProcessHandle> all = Stream.concat(Stream.of(postmaster), postmaster.descendants()).toList();
            all.forEach(ProcessHandle::destroyForcibly);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Tells PostgreSQL to end at once and leave its recovery to the next start; the program brings it back. */
    void stopPostgresAtOnce() {
        try {
            String postmaster = Files.readAllLines(home.resolve("data/postmaster.pid")).getFirst().strip();
            if (new ProcessBuilder("kill", "-QUIT", postmaster).inheritIO().start().waitFor() != 0) {
                throw new IllegalStateException("no PostgreSQL of number " + postmaster);
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private void waitForEnd() {
        try {
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                throw new IllegalStateException("the server does not end");
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        process.destroy();
        waitForEnd();
    }
}
