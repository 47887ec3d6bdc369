package org.stepwell.platform.store;

import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;
import org.postgresql.copy.CopyManager;
import org.postgresql.copy.CopyOut;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;

/**
 * Writes the embedded store anew: living rows are copied into a newly made cluster, which takes the place of the old one.
 * What was deleted lives on in dead rows, in the write-ahead log, in freed pages and in PostgreSQL's own log; none of
 * that is copied.
 */
public final class StoreRewrite {
    private StoreRewrite() {
    }

    /**
     * Does it, alone on the home.
     *
     * @return rows copied
     * @throws StartProblem when a server runs on the home, or the store cannot be read or written
     */
    public static long run(Settings settings, Clock clock) {
        try (StoreHome home = new StoreHome(settings.home())) {
            if (!home.take()) {
                throw new StartProblem("Stepwell is running on " + home.folder() + ": " + home.holder()
                        + ". Stop it first; the store can be written anew only when nobody uses it.");
            }
            home.sayHolder(OpenStore.holder(clock) + ", writing the store anew");
            // Nobody may join either cluster meanwhile: what is written into the old one would be lost.
            home.remove("port");
            long rows = copied(home);
            for (String folder : List.of(DataFolders.DATA, DataFolders.FRESH)) {
                if (home.read(folder + "/postmaster.pid").isPresent()) {
                    throw new StartProblem("PostgreSQL does not stop on " + home.folder().resolve(folder)
                            + ". Nothing is lost; end that process, then try again.");
                }
            }
            DataFolders.exchange(home.folder());
            List.of("postgres.log", "postgres.log.1").forEach(home::remove);
            return rows;
        } catch (IOException failed) {
            throw new StartProblem("The store cannot be written anew in " + settings.home() + ": " + failed.getMessage()
                    + ". Nothing is lost; start Stepwell as before, or try again.", failed);
        }
    }

    private static long copied(StoreHome home) {
        EmbeddedServer old = new EmbeddedServer(home, DataFolders.DATA, false);
        EmbeddedServer fresh = new EmbeddedServer(home, DataFolders.FRESH, false);
        Thread cut = Thread.ofPlatform().unstarted(() -> {
            old.close();
            fresh.close();
        });
        Runtime.getRuntime().addShutdownHook(cut);
        try (old; fresh) {
            for (EmbeddedServer server : List.of(old, fresh)) {
                server.start();
                DatabaseRoles.makeAll(server.superuser(), EmbeddedServer.DATABASE, OpenStore.runTimeOf(home),
                        OpenStore.ownerOf(home));
                StoreSchema.migrate(OpenStore.embedded(home, server.url(), null));
            }
            return copy(old, fresh);
        } catch (SQLException failed) {
            throw new StartProblem("The store cannot be copied: " + failed.getMessage()
                    + " Nothing is lost; start Stepwell as before, or try again.", failed);
        } finally {
            OpenStore.forgetUnlessStopping(cut);
        }
    }

    /** All tables from one moment, in one transaction; foreign keys and triggers hold as for any other row. */
    private static long copy(EmbeddedServer old, EmbeddedServer fresh) throws SQLException {
        try (Connection from = old.superuser(); Connection to = fresh.superuser();
                Statement there = from.createStatement(); Statement here = to.createStatement()) {
            from.setAutoCommit(false);
            from.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
            to.setAutoCommit(false);
            List<String> tables = TableOrder.parentsFirst(here);
            Set<String> lost = new HashSet<>(TableOrder.parentsFirst(there));
            tables.forEach(lost::remove);
            if (!lost.isEmpty()) {
                throw new StartProblem("The store has tables that this version does not know: " + lost
                        + ". Use the version that made them.");
            }
            // What the tables brought along by themselves comes from the old store like all else.
            here.execute("truncate " + String.join(", ", tables));
            long rows = 0;
            for (String table : tables) {
                rows += copy(from.unwrap(PGConnection.class).getCopyAPI(), to.unwrap(PGConnection.class).getCopyAPI(),
                        table, columns(here, table));
            }
            to.commit();
            here.execute("analyze");
            to.commit();
            from.rollback();
            return rows;
        }
    }

    private static String columns(Statement statement, String table) throws SQLException {
        try (ResultSet row = statement.executeQuery("select string_agg(quote_ident(attname), ', ' order by attnum)"
                + " from pg_attribute where attrelid = " + statement.enquoteLiteral(table) + "::regclass and attnum > 0"
                + " and not attisdropped and attgenerated = ''")) {
            row.next();
            return row.getString(1);
        }
    }

    private static long copy(CopyManager from, CopyManager to, String table, String columns) throws SQLException {
        CopyOut out = from.copyOut("copy " + table + " (" + columns + ") to stdout (format binary)");
        CopyIn in = to.copyIn("copy " + table + " (" + columns + ") from stdin (format binary)");
        for (byte[] part = out.readFromCopy(); part != null; part = out.readFromCopy()) {
            in.writeToCopy(part, 0, part.length);
        }
        long rows = in.endCopy();
        if (rows != out.getHandledRowCount()) {
            throw new StartProblem("Of " + table + " " + out.getHandledRowCount() + " rows were read and " + rows
                    + " written. Nothing is changed; please report this.");
        }
        return rows;
    }
}
