package org.stepwell.platform.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.stepwell.Built;

/** The built program as a process of its own, on any free port. */
final class StepwellProcess implements AutoCloseable {
    private final Process process;
    private final Path errors;
    private final Path home;
    private String address = "";

    private StepwellProcess(Process process, Path errors, Path home) {
        this.process = process;
        this.errors = errors;
        this.home = home;
    }

    /** Starts and does not wait. */
    static StepwellProcess launch(Path home, Map<String, String> environment) throws IOException {
        Path errors = Files.createTempFile(home.getParent(), "stepwell", ".err");
        List<String> command = Built.command();
        command.add("start");
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(errors.toFile());
        builder.environment().keySet().removeIf(name -> name.startsWith("STEPWELL_"));
        Map<String, String> all = new HashMap<>(environment);
        all.putIfAbsent("STEPWELL_HOME", home.toString());
        all.putIfAbsent("STEPWELL_PORT", "0");
        builder.environment().putAll(all);
        return new StepwellProcess(builder.start(), errors, home);
    }

    /** Starts and waits until it says its address. */
    static StepwellProcess serving(Path home, Map<String, String> environment) throws IOException {
        StepwellProcess started = launch(home, environment);
        BufferedReader out = new BufferedReader(
                new InputStreamReader(started.process.getInputStream(), StandardCharsets.UTF_8));
        String line;
        while ((line = out.readLine()) != null) {
            if (line.startsWith("http")) {
                started.address = line.strip();
                Thread.ofVirtual().start(() -> out.lines().forEach(ignored -> { }));
                return started;
            }
        }
        throw new AssertionError("did not serve: " + started.errors());
    }

    String address() {
        return address;
    }

    Process process() {
        return process;
    }

    String errors() {
        try {
            return Files.readString(errors);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Exit code; fails when the program has not ended after a minute and a half. */
    int exit() throws InterruptedException {
        if (!process.waitFor(90, TimeUnit.SECONDS)) {
            throw new AssertionError("still running: " + errors());
        }
        return process.exitValue();
    }

    /** HTTP status of a path, 0 when nobody answers. */
    int status(HttpClient client, String path) {
        try {
            HttpRequest request = HttpRequest.newBuilder(URI.create(address + path)).timeout(Duration.ofSeconds(20))
                    .build();
            return client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
        } catch (IOException nobody) {
            return 0;
        } catch (InterruptedException stop) {
            throw new IllegalStateException(stop);
        }
    }

    /** Ends the program, its database and all of that one's processes at once, without any order. */
    void killTree() {
        List<ProcessHandle> database = ProcessHandle.allProcesses().filter(other -> runsFrom(other, home)).toList();
        process.destroyForcibly();
        database.forEach(ProcessHandle::destroyForcibly);
    }

    private static boolean runsFrom(ProcessHandle process, Path home) {
        return process.info().command().filter(command -> command.startsWith(home.toString())).isPresent();
    }

    /** The server named by the home's pid file. */
    static ProcessHandle postgres(Path home) throws IOException {
        List<String> lines = Files.readAllLines(home.resolve("data/postmaster.pid"));
        return ProcessHandle.of(Long.parseLong(lines.getFirst().strip())).orElseThrow();
    }

    /** Whether a program still runs that was unpacked into the home. */
    static boolean anyLeft(Path home) {
        return ProcessHandle.allProcesses().anyMatch(process -> runsFrom(process, home));
    }

    @Override
    public void close() throws InterruptedException {
        process.destroy();
        exit();
        if (!process.isAlive() && anyLeft(home)) {
            throw new AssertionError("a process of " + home + " is left");
        }
    }
}
