package org.stepwell.platform.store;

import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicInteger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * One PostgreSQL for all tests of a run: the one named by STEPWELL_TEST_DB_URL, _USER and _PASSWORD (a superuser), else
 * one in a container when a Docker engine answers, else the embedded one. The tables are made once, as a template.
 */
public final class TestServer {
    private static final Logger LOG = LoggerFactory.getLogger(TestServer.class);
    private static final Login OWNER = new Login("stepwell_owner", "owner-of-tests");
    private static final Login RUN_TIME = new Login("stepwell_app", "run-time-of-tests");
    private static final AtomicInteger COUNT = new AtomicInteger();
    private static final long PID = ProcessHandle.current().pid();

    private final String server;
    private final String options;
    private final Login superuser;
    private final String template = "stepwell_template_" + PID;

    private TestServer(String url, Login superuser) {
        int slash = url.lastIndexOf('/');
        int question = url.indexOf('?');
        this.server = url.substring(0, slash + 1);
        this.options = question < 0 ? "" : url.substring(question);
        this.superuser = superuser;
        String any = question < 0 ? url.substring(slash + 1) : url.substring(slash + 1, question);
        run(any, "drop database if exists " + template, "create database " + template);
        DatabaseRoles.makeAll(superuser(template), template, RUN_TIME, OWNER);
        StoreSchema.migrate(store(template));
    }

    private static final class Shared {
        static final TestServer SERVER = find();
    }

    /** The server of this run, started at first use. */
    public static TestServer shared() {
        return Shared.SERVER;
    }

    private static TestServer find() {
        String url = System.getenv("STEPWELL_TEST_DB_URL");
        if (url != null && !url.isBlank()) {
            LOG.info("store tests run on the PostgreSQL named by STEPWELL_TEST_DB_URL");
            TestServer named = new TestServer(url,
                    new Login(System.getenv().getOrDefault("STEPWELL_TEST_DB_USER", "postgres"),
                            System.getenv().getOrDefault("STEPWELL_TEST_DB_PASSWORD", "")));
            Runtime.getRuntime().addShutdownHook(Thread.ofPlatform().unstarted(
                    () -> named.run("postgres", "drop database if exists " + named.template + " with (force)")));
            return named;
        }
        if (dockerAnswers()) {
            LOG.info("store tests run on PostgreSQL in a container");
            PostgreSQLContainer container = new PostgreSQLContainer("postgres:18");
            container.start();
            return new TestServer(container.getJdbcUrl(),
                    new Login(container.getUsername(), container.getPassword()));
        }
        LOG.info("store tests run on the embedded PostgreSQL");
        return embedded();
    }

    private static boolean dockerAnswers() {
        String host = System.getenv("DOCKER_HOST");
        boolean likely = (host != null && !host.isBlank()) || Files.exists(Path.of("/var/run/docker.sock"));
        return likely && DockerClientFactory.instance().isDockerAvailable();
    }

    private static TestServer embedded() {
        try {
            Path folder = Files.createTempDirectory(Files.createDirectories(Path.of("target")).toAbsolutePath(),
                    "postgres-");
            StoreHome home = new StoreHome(folder);
            home.take();
            EmbeddedServer server = new EmbeddedServer(home);
            Runtime.getRuntime().addShutdownHook(Thread.ofPlatform().unstarted(() -> {
                server.close();
                home.close();
                try {
                    PostgresBinaries.deleteTree(folder);
                } catch (IOException left) {
                    LOG.warn("{} is left behind: {}", folder, left.getMessage());
                }
            }));
            server.start();
            return new TestServer(server.url(), new Login("postgres", home.secret("superuser")));
        } catch (IOException full) {
            throw new UncheckedIOException(full);
        }
    }

    /** A new database with all tables and no rows. */
    public OpenStore freshStore() {
        String name = "t_" + PID + "_" + COUNT.incrementAndGet();
        run("postgres", "create database " + name + " template " + template + " owner stepwell_owner",
                "revoke all on database " + name + " from public",
                "grant connect on database " + name + " to " + RUN_TIME.user());
        return store(name);
    }

    /** A new database with the roles and no tables. */
    OpenStore bareStore() {
        String name = "b_" + PID + "_" + COUNT.incrementAndGet();
        run("postgres", "create database " + name + " owner stepwell_owner");
        return store(name);
    }

    /** Removes a database that this gave out. */
    public void drop(OpenStore store) {
        String url = store.url().split("\\?", 2)[0];
        run("postgres", "drop database if exists " + url.substring(url.lastIndexOf('/') + 1) + " with (force)");
    }

    /** The pool that the program itself would use. */
    public HikariDataSource pool(OpenStore store) {
        return StoreConfiguration.pool(store);
    }

    /** The connections with more power that the program itself would use. */
    public OwnerConnections ownerConnections(OpenStore store) {
        return new OwnerConnections(store);
    }

    /** A connection of the superuser to a database of this server, to be closed by the caller. */
    public Connection superuser(String database) {
        try {
            return DriverManager.getConnection(server + database + options, superuser.user(), superuser.password());
        } catch (SQLException refused) {
            throw new IllegalStateException(refused);
        }
    }

    private OpenStore store(String database) {
        return OpenStore.on(server + database + options, RUN_TIME, OWNER, DatabaseRoles.ERASER);
    }

    private void run(String database, String... sql) {
        try (Connection connection = superuser(database); Statement statement = connection.createStatement()) {
            for (String one : sql) {
                statement.execute(one);
            }
        } catch (SQLException failed) {
            throw new IllegalStateException(failed);
        }
    }
}
