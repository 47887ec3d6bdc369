package org.stepwell.browser;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** The built program on a home and a port of its own, with the sample class, as a teacher would start it. */
final class RunningServer implements AutoCloseable {
    static final String PASSWORD = "walk-the-whole-job-1";

    private final Process process;
    private final Path home;
    private final String address;

    private RunningServer(Process process, Path home, String address) {
        this.process = process;
        this.home = home;
        this.address = address;
    }

    static RunningServer start() {
        try {
            Path home = Files.createTempDirectory("stepwell-browser");
            ProcessBuilder builder = new ProcessBuilder(ProcessHandle.current().info().command().orElse("java"),
                    "-jar", System.getProperty("stepwell.jar"), "start");
            builder.environment().put("STEPWELL_HOME", home.toString());
            builder.environment().put("STEPWELL_PORT", "0");
            builder.environment().put("STEPWELL_SAMPLE_PASSWORD", PASSWORD);
            builder.redirectError(home.resolve("server.log").toFile());
            Process process = builder.start();
            BufferedReader out = new BufferedReader(
                    new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
            String first = out.readLine();
            if (first == null || !first.startsWith("http")) {
                process.destroy();
                throw new IllegalStateException("the server did not start: "
                        + Files.readString(home.resolve("server.log")));
            }
            return new RunningServer(process, home, first);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    String address() {
        return address;
    }

    Path home() {
        return home;
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
