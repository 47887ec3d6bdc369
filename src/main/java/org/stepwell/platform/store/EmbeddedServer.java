package org.stepwell.platform.store;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.stepwell.platform.StartProblem;

/**
 * The life of the embedded PostgreSQL: made once, started, watched and brought back, stopped. It listens on 127.0.0.1
 * alone and asks everybody for a password.
 */
final class EmbeddedServer implements AutoCloseable {
    static final String DATABASE = "stepwell";
    private static final String MAJOR_VERSION = "18";
    private static final Duration PATIENCE = Duration.ofMinutes(1);
    private static final Duration WATCH = Duration.ofMillis(500);
    private static final Logger LOG = LoggerFactory.getLogger(EmbeddedServer.class);

    private final StoreHome home;
    private final Path data;
    private final boolean published;
    private final PostgresPrograms programs;
    private int port;
    private volatile boolean stopping;
    private @Nullable Thread watcher;

    EmbeddedServer(StoreHome home) {
        this(home, DataFolders.DATA, true);
    }

    /**
     * @param folder of the cluster, by name below the home
     * @param published whether the port is noted in the home, for single commands to join
     */
    EmbeddedServer(StoreHome home, String folder, boolean published) {
        this.home = home;
        this.data = home.folder().resolve(folder);
        this.published = published;
        this.programs = new PostgresPrograms(PostgresBinaries.unpackedBelow(home.folder()), home.folder());
    }

    void start() {
        if (data.endsWith(DataFolders.DATA)) {
            new EmbeddedServer(home, DataFolders.FRESH, false).discard();
            DataFolders.settle(home.folder());
        }
        if (!Files.exists(data.resolve("PG_VERSION"))) {
            make();
        }
        refuseOtherVersion();
        stopLeftOver();
        port = freePort();
        if (published) {
            home.write("port", Integer.toString(port));
        }
        startProgram();
        try (Connection connection = superuserOn("postgres"); var statement = connection.createStatement()) {
            var found = statement.executeQuery("select 1 from pg_database where datname = '" + DATABASE + "'");
            if (!found.next()) {
                statement.execute("create database " + DATABASE);
            }
        } catch (SQLException failed) {
            throw new StartProblem("The embedded PostgreSQL started but refuses the secret kept in " + home.folder()
                    + ": " + failed.getMessage() + ". Were files of another home copied over it?", failed);
        }
        watcher = Thread.ofPlatform().daemon().name("postgres-watch").start(this::watch);
    }

    /** Removes the cluster, and ends the server of a cut run on it. */
    void discard() {
        if (Files.exists(data)) {
            stopLeftOver();
            try {
                PostgresBinaries.deleteTree(data);
            } catch (IOException denied) {
                throw new StartProblem(data + " cannot be removed. Start as the user who owns it.", denied);
            }
        }
    }

    private void make() {
        Path password = home.folder().resolve("secret-superuser");
        home.secret("superuser");
        try {
            PostgresBinaries.deleteTree(data);
            Path next = home.folder().resolve("data.next");
            PostgresBinaries.deleteTree(next);
            programs.run(Duration.ofMinutes(2), "initdb", "-D", next.toString(), "-U", "postgres", "-A",
                    "scram-sha-256", "--pwfile=" + password, "-k", "-E", "UTF8", "--locale=C",
                    "--locale-provider=builtin", "--builtin-locale=C.UTF-8");
            Files.move(next, data);
        } catch (IOException failed) {
            throw new StartProblem("The store cannot be made in " + data + ": " + failed.getMessage(), failed);
        }
    }

    private void refuseOtherVersion() {
        try {
            String version = Files.readString(data.resolve("PG_VERSION")).strip();
            if (!version.equals(MAJOR_VERSION)) {
                throw new StartProblem("The store in " + data + " was made by PostgreSQL " + version
                        + ", but this Stepwell brings " + MAJOR_VERSION + ". Start the Stepwell that made it and take "
                        + "a backup there, then restore it here into an empty home.");
            }
        } catch (IOException unreadable) {
            throw new StartProblem(data + " cannot be read. Start as the user who owns it.", unreadable);
        }
    }

    /** A hard kill of the program leaves its PostgreSQL running: end it, so that one process alone writes the files. */
    private void stopLeftOver() {
        Optional<ProcessHandle> left = postmaster();
        if (left.isPresent()) {
            LOG.info("A PostgreSQL of an earlier run still holds {}; stopping it", data);
            stopProgram();
            if (postmaster().isPresent()) {
                throw new StartProblem("PostgreSQL, process " + left.get().pid() + ", of an earlier run still holds "
                        + data + " after a minute. End that process, then start again.");
            }
        }
        removeStalePidFile();
    }

    private void removeStalePidFile() {
        try {
            Files.deleteIfExists(data.resolve("postmaster.pid"));
        } catch (IOException denied) {
            throw new StartProblem(data + " cannot be written. Start as the user who owns it.", denied);
        }
    }

    /** The live server named by the pid file; empty when the number now belongs to another program or to nobody. */
    private Optional<ProcessHandle> postmaster() {
        Path file = data.resolve("postmaster.pid");
        try {
            if (!Files.exists(file)) {
                return Optional.empty();
            }
            long pid = Long.parseLong(Files.readAllLines(file).getFirst().strip());
            return ProcessHandle.of(pid).filter(ProcessHandle::isAlive).filter(EmbeddedServer::isPostgres);
        } catch (IOException | RuntimeException halfWritten) {
            return Optional.empty();
        }
    }

    /** A dead process that nobody has collected yet has no command any more, so it does not count. */
    private static boolean isPostgres(ProcessHandle process) {
        return process.info().command().map(command -> Path.of(command).getFileName().toString())
                .filter(name -> name.startsWith("postgres")).isPresent();
    }

    private void startProgram() {
        rotateLog();
        String options = String.join(" ", List.of("-c port=" + port, "-c listen_addresses=127.0.0.1",
                "-c unix_socket_directories=", "-c fsync=on", "-c synchronous_commit=on", "-c full_page_writes=on",
                "-c password_encryption=scram-sha-256", "-c timezone=UTC", "-c log_timezone=UTC",
                "-c max_connections=40", "-c log_min_duration_statement=-1"));
        try {
            programs.run(PATIENCE.plusSeconds(10), "pg_ctl", "start", "-D", data.toString(), "-w", "-t", "60", "-s",
                    "-l", home.folder().resolve("postgres.log").toString(), "-o", options);
        } catch (IOException failed) {
            throw new StartProblem("The embedded PostgreSQL does not start: " + failed.getMessage() + " Its log is "
                    + home.folder().resolve("postgres.log") + ".", failed);
        }
    }

    private void rotateLog() {
        Path log = home.folder().resolve("postgres.log");
        try {
            if (Files.exists(log) && Files.size(log) > 10_000_000) {
                Files.move(log, home.folder().resolve("postgres.log.1"),
                        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException kept) {
            LOG.warn("{} cannot be rotated: {}", log, kept.getMessage());
        }
    }

    private void stopProgram() {
        try {
            programs.run(PATIENCE.plusSeconds(5), "pg_ctl", "stop", "-D", data.toString(), "-m", "fast", "-w", "-t",
                    "60", "-s");
        } catch (IOException failed) {
            if (postmaster().isPresent()) {
                LOG.warn("PostgreSQL does not stop: {}", failed.getMessage());
            }
        }
    }

    private void watch() {
        while (!stopping) {
            LockSupport.parkNanos(WATCH.toNanos());
            bringBackWhenDead();
        }
    }

    private synchronized void bringBackWhenDead() {
        if (stopping || postmaster().isPresent()) {
            return;
        }
        LOG.warn("PostgreSQL has died; starting it again");
        try {
            removeStalePidFile();
            startProgram();
            LOG.warn("PostgreSQL is back");
        } catch (RuntimeException again) {
            LOG.error("{} Trying again.", again.getMessage());
        }
    }

    private int freePort() {
        int remembered = published ? home.read("port").map(Integer::parseInt).orElse(0) : 0;
        if (remembered > 0) {
            try (ServerSocket free = new ServerSocket(remembered, 1, InetAddress.getLoopbackAddress())) {
                return free.getLocalPort();
            } catch (IOException taken) {
                LOG.debug("port {} is taken by another program", remembered);
            }
        }
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return free.getLocalPort();
        } catch (IOException none) {
            throw new StartProblem("No port is free on 127.0.0.1 for the embedded PostgreSQL.", none);
        }
    }

    Connection superuserOn(String database) throws SQLException {
        return DriverManager.getConnection("jdbc:postgresql://127.0.0.1:" + port + "/" + database, "postgres",
                home.secret("superuser"));
    }

    Connection superuser() {
        try {
            return superuserOn(DATABASE);
        } catch (SQLException failed) {
            throw new StartProblem("The embedded PostgreSQL cannot be reached: " + failed.getMessage(), failed);
        }
    }

    String url() {
        return url(port);
    }

    static String url(int port) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + DATABASE;
    }

    @Override
    public void close() {
        stopping = true;
        if (watcher != null) {
            LockSupport.unpark(watcher);
        }
        synchronized (this) {
            if (postmaster().isPresent()) {
                stopProgram();
            }
        }
    }
}
