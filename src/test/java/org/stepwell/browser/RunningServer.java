package org.stepwell.browser;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.stepwell.Built;

/** The built program on a home and a port of its own, with the sample class, as a teacher would start it. */
final class RunningServer implements AutoCloseable {
    static final String PASSWORD = "walk-the-whole-job-1";

    private final Process process;
    private final BufferedReader out;
    private final Path home;
    private final String address;

    private RunningServer(Process process, BufferedReader out, Path home, String address) {
        this.process = process;
        this.out = out;
        this.home = home;
        this.address = address;
    }

    static RunningServer start() {
        try {
            Path home = Files.createTempDirectory("stepwell-browser");
            List<String> command = Built.command();
            command.add("start");
            ProcessBuilder builder = new ProcessBuilder(command);
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
            return new RunningServer(process, out, home, first);
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

    /** Reads what is printed up to the first line that fits, and gives what the first group of it matched. */
    String printed(Pattern line) {
        try {
            String next;
            while ((next = out.readLine()) != null) {
                Matcher fit = line.matcher(next);
                if (fit.find()) {
                    return fit.group(1);
                }
            }
            throw new IllegalStateException("never printed: " + line);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** Runs a command of the program beside the server and gives its first line. */
    String command(String... words) {
        try {
            List<String> all = Built.command();
            all.addAll(List.of(words));
            ProcessBuilder builder = new ProcessBuilder(all);
            builder.environment().put("STEPWELL_HOME", home.toString());
            builder.redirectError(home.resolve("command.log").toFile());
            Process command = builder.start();
            try (BufferedReader said = new BufferedReader(
                    new InputStreamReader(command.getInputStream(), StandardCharsets.UTF_8))) {
                String first = said.readLine();
                if (command.waitFor() != 0 || first == null) {
                    throw new IllegalStateException(Files.readString(home.resolve("command.log")));
                }
                return first;
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
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
