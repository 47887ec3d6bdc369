package org.stepwell.platform.store;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;

/**
 * A PostgreSQL that is reachable, keeps what it acknowledges and has the three roles: the owner, who migrates and owns
 * the tables; the run-time user, who owns nothing; and the eraser, whom only the owner may become. Closing stops an
 * embedded server that was started for it.
 */
public final class OpenStore implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(OpenStore.class);

    private final String url;
    private final Login runTime;
    private final Login owner;
    private final String eraserRole;
    private final @Nullable AutoCloseable server;

    private OpenStore(String url, Login runTime, Login owner, String eraserRole, @Nullable AutoCloseable server) {
        this.url = url;
        this.runTime = runTime;
        this.owner = owner;
        this.eraserRole = eraserRole;
        this.server = server;
        TransactionProof.makeFor(this);
    }

    /**
     * Opens the store for a server: alone on its home.
     *
     * @param settings where the store is
     * @param clock gives the time noted as the start
     * @throws StartProblem when another process holds the home or the database cannot be trusted
     */
    public static OpenStore open(Settings settings, Clock clock) {
        if (settings.database() != null) {
            return OperatorDatabase.open(settings.home(), settings.database());
        }
        StoreHome home = new StoreHome(settings.home());
        if (!home.take()) {
            throw new StartProblem("Stepwell is already running on " + home.folder() + ": " + home.holder()
                    + ". Use that one, stop it, or set STEPWELL_HOME to another folder.");
        }
        home.sayHolder(holder(clock) + ", starting");
        return started(home);
    }

    /**
     * Opens the store for a single command: joins the server that runs on the home, else starts the database for as
     * long as the command needs it.
     *
     * @param settings where the store is
     * @param clock gives the time noted as the start
     * @throws StartProblem when the database cannot be reached or trusted
     */
    public static OpenStore join(Settings settings, Clock clock) {
        if (settings.database() != null) {
            return OperatorDatabase.open(settings.home(), settings.database());
        }
        StoreHome home = new StoreHome(settings.home());
        if (home.take()) {
            home.sayHolder(holder(clock) + ", a single command");
            return started(home);
        }
        String port = home.read("port").orElseThrow(() -> new StartProblem("Stepwell is just starting on "
                + home.folder() + ": " + home.holder() + ". Try again when it is ready."));
        return embedded(home, EmbeddedServer.url(Integer.parseInt(port)), null);
    }

    /** Notes in the home where the running server is found, for a second start to say. */
    public static void sayServing(Settings settings, Clock clock, String address) {
        if (settings.database() == null) {
            new StoreHome(settings.home()).sayHolder(holder(clock) + ", at " + address);
        }
    }

    static String holder(Clock clock) {
        return "process " + ProcessHandle.current().pid() + ", since "
                + clock.instant().truncatedTo(ChronoUnit.SECONDS);
    }

    private static OpenStore started(StoreHome home) {
        EmbeddedServer server = new EmbeddedServer(home);
        // Until the caller has the store in hand, a signal has nobody else to stop what is just starting.
        Thread early = Thread.ofPlatform().unstarted(server::close);
        Runtime.getRuntime().addShutdownHook(early);
        try {
            server.start();
            DatabaseRoles.makeAll(server.superuser(), EmbeddedServer.DATABASE, runTimeOf(home), ownerOf(home));
            return embedded(home, server.url(), () -> {
                server.close();
                home.close();
            });
        } catch (RuntimeException failed) {
            server.close();
            home.close();
            throw failed;
        } finally {
            forgetUnlessStopping(early);
        }
    }

    static void forgetUnlessStopping(Thread early) {
        try {
            Runtime.getRuntime().removeShutdownHook(early);
        } catch (IllegalStateException stoppingNow) {
            LOG.debug("stopped while starting");
        }
    }

    static OpenStore embedded(StoreHome home, String url, @Nullable AutoCloseable server) {
        return new OpenStore(url, runTimeOf(home), ownerOf(home), DatabaseRoles.ERASER, server);
    }

    static Login runTimeOf(StoreHome home) {
        return new Login("stepwell_app", home.secret("app"));
    }

    static Login ownerOf(StoreHome home) {
        return new Login("stepwell_owner", home.secret("owner"));
    }

    /** A store on a server that somebody else starts and stops. */
    static OpenStore on(String url, Login runTime, Login owner, String eraserRole) {
        return new OpenStore(url, runTime, owner, eraserRole, null);
    }

    /** JDBC address. */
    public String url() {
        return url;
    }

    /** A connection of the run-time user at each call, for a single command. */
    public DataSource runTimeSource() {
        return new DriverManagerDataSource(url, runTime.user(), runTime.password());
    }

    /** Single connections of the owner and the eraser, for a single command. */
    public OwnerConnections ownerConnections() {
        return new OwnerConnections(this);
    }

    /** The user that serves requests. */
    public Login runTime() {
        return runTime;
    }

    /** The user that migrates and owns the tables. */
    public Login owner() {
        return owner;
    }

    /** Name of the role that alone may delete; the owner may {@code set role} to it. */
    public String eraserRole() {
        return eraserRole;
    }

    @Override
    public void close() {
        if (server != null) {
            try {
                server.close();
            } catch (RuntimeException failed) {
                throw failed;
            } catch (Exception failed) {
                throw new IllegalStateException(failed);
            }
        }
    }
}
