package org.stepwell.table;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;

/** Reads what truly lies in the store, past the program and past every policy. */
final class StoredLooks implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final Path home;
    private @Nullable Connection connection;

    StoredLooks(Path home) {
        this.home = home;
    }

    /**
     * One row.
     *
     * @param token the task that only this look carries
     * @param adult sign-in name of the adult under whom it was stored
     * @param clockOffsetMs as sent with the look; 0 when not measured
     */
    record Row(String token, String child, int step, String adult, LocalDate day, boolean withdrawn,
            long clockOffsetMs) {}

    /** Every look whose task begins with the mark, in the order of storing. Waits while the store is down. */
    List<Row> markedWith(String mark) {
        Instant end = Instant.now().plus(PATIENCE);
        while (true) {
            try {
                return read(mark);
            } catch (SQLException down) {
                if (Instant.now().isAfter(end)) {
                    throw new IllegalStateException("the store does not come back", down);
                }
                close();
                LockSupport.parkNanos(Duration.ofMillis(50).toNanos());
            }
        }
    }

    /** From now on the adult has the class no more, as when it is ended on the screen; or has it again. */
    void access(String adult, boolean has) {
        try (var change = open().prepareStatement("update class_adult set ends_on = ?, ended_at = case when ? then null else"
                + " now() end where adult_id = (select adult_id from adult where sign_in = ?)")) {
            change.setObject(1, has ? null : LocalDate.now(Tablet.SCHOOL));
            change.setBoolean(2, has);
            change.setString(3, adult);
            change.executeUpdate();
        } catch (SQLException failed) {
            throw new IllegalStateException(failed);
        }
    }

    /** How many looks whose task begins with the mark wait for a word of the class. */
    int waiting(String mark) {
        try (Statement statement = open().createStatement()) {
            ResultSet row = statement.executeQuery(
                    "select count(*) from observation where waiting_since is not null and task like '" + mark + "%'");
            row.next();
            return row.getInt(1);
        } catch (SQLException failed) {
            throw new IllegalStateException(failed);
        }
    }

    private List<Row> read(String mark) throws SQLException {
        try (Statement statement = open().createStatement()) {
            ResultSet row = statement.executeQuery("""
                    select o.task, c.school_key, coalesce(o.step, 0), a.sign_in, o.observed_on, o.withdrawn,
                           coalesce(o.clock_offset_ms, 0), o.observer
                    from observation o join child c using (district_id, child_id)
                    join adult a on a.district_id = o.district_id and a.adult_id = o.recorded_by
                    where o.task like '%s%%' order by o.recorded_at, o.observation_id""".formatted(mark));
            List<Row> rows = new ArrayList<>();
            while (row.next()) {
                if (!row.getString(4).equals(row.getString(8))) {
                    throw new IllegalStateException(row.getString(1) + " names " + row.getString(8)
                            + " but was recorded by " + row.getString(4));
                }
                rows.add(new Row(row.getString(1), row.getString(2), row.getInt(3), row.getString(4),
                        row.getObject(5, LocalDate.class), row.getBoolean(6), row.getLong(7)));
            }
            return rows;
        }
    }

    private Connection open() throws SQLException {
        if (connection == null) {
            try {
                String port = Files.readString(home.resolve("port")).strip();
                String secret = Files.readString(home.resolve("secret-superuser")).strip();
                DriverManager.setLoginTimeout(5);
                connection = DriverManager.getConnection("jdbc:postgresql://127.0.0.1:" + port + "/stepwell",
                        "postgres", secret);
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        return connection;
    }

    @Override
    public void close() {
        try {
            if (connection != null) {
                connection.close();
            }
        } catch (SQLException gone) {
            // It ended with the server.
        } finally {
            connection = null;
        }
    }
}
