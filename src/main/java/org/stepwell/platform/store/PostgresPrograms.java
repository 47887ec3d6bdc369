package org.stepwell.platform.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.stepwell.platform.StartProblem;

/** Runs the programs of PostgreSQL, which refuse to run as root: under root they get a name space without one. */
final class PostgresPrograms {
    private final Path binaries;
    private final Path scratch;
    private final List<String> before;

    PostgresPrograms(Path binaries, Path scratch) {
        this.binaries = binaries;
        this.scratch = scratch;
        this.before = "root".equals(System.getProperty("user.name")) ? withoutRoot() : List.of();
    }

    private List<String> withoutRoot() {
        try {
            run(Duration.ofSeconds(10), List.of("unshare", "-U", "true"));
            return List.of("unshare", "-U");
        } catch (IOException refused) {
            throw new StartProblem("PostgreSQL does not run as root, and this system lets no program shed it ("
                    + refused.getMessage() + "). Start Stepwell as an ordinary user, or name an own PostgreSQL by "
                    + "STEPWELL_DB_URL.", refused);
        }
    }

    /**
     * Runs one program to its end.
     *
     * @throws IOException with what it said, when it fails or takes longer than the patience
     */
    void run(Duration patience, String program, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(before);
        command.add(binaries.resolve("bin").resolve(program).toString());
        command.addAll(List.of(arguments));
        run(patience, command);
    }

    /** Output goes to a file: a pipe would stay open for as long as the server that the program leaves behind. */
    private void run(Duration patience, List<String> command) throws IOException {
        Path said = Files.createTempFile(scratch, "said", ".txt");
        try {
            ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true)
                    .redirectOutput(said.toFile()).directory(scratch.toFile());
            builder.environment().keySet().removeIf(name -> name.startsWith("PG") || name.startsWith("STEPWELL"));
            builder.environment().put("LC_ALL", "C");
            Process process = builder.start();
            process.getOutputStream().close();
            if (!process.waitFor(patience.toSeconds(), TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException(command + " took longer than " + patience.toSeconds() + " s.");
            }
            if (process.exitValue() != 0) {
                throw new IOException(Files.readString(said).strip());
            }
        } catch (InterruptedException stop) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", stop);
        } finally {
            Files.deleteIfExists(said);
        }
    }
}
