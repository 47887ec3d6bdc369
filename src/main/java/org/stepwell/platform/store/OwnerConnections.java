package org.stepwell.platform.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.ConnectionCallback;
import org.stepwell.platform.StartProblem;

/** Single connections with more power than requests have. For erasure and integrity alone; nothing is pooled. */
public final class OwnerConnections {
    private static final String DEADLOCK = "40P01";
    private static final int TRIES = 5;

    private final OpenStore store;

    OwnerConnections(OpenStore store) {
        this.store = store;
    }

    /**
     * A connection of the owner, to be closed by the caller.
     *
     * @throws SQLException when the database cannot be reached
     */
    public Connection owner() throws SQLException {
        return DriverManager.getConnection(store.url(), store.owner().user(), store.owner().password());
    }

    /**
     * A connection that acts as the eraser, the only role that may delete facts; to be closed by the caller.
     *
     * @throws SQLException when the database cannot be reached
     */
    public Connection eraser() throws SQLException {
        Connection connection = owner();
        try (Statement statement = connection.createStatement()) {
            statement.execute("set role " + statement.enquoteIdentifier(store.eraserRole(), true));
            return connection;
        } catch (SQLException refused) {
            connection.close();
            throw refused;
        }
    }

    /**
     * Does all of a work as the eraser or nothing of it; again where others were in the way.
     *
     * @param what begins the sentence of a failure, such as "The sample cannot be removed"
     * @throws StartProblem when it cannot be done
     */
    public <T> T asEraser(String what, ConnectionCallback<T> work) {
        for (int left = TRIES - 1;; left--) {
            try (Connection eraser = eraser()) {
                eraser.setAutoCommit(false);
                T done = work.doInConnection(eraser);
                eraser.commit();
                return done;
            } catch (SQLException | DataAccessException failed) {
                SQLException cause = failed instanceof SQLException direct ? direct
                        : failed.getCause() instanceof SQLException inner ? inner : null;
                if (left == 0 || cause == null || !DEADLOCK.equals(cause.getSQLState())) {
                    throw new StartProblem(what + ": " + failed.getMessage(), failed);
                }
            }
        }
    }
}
