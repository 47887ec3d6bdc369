package org.stepwell.platform.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;

/** Single connections with more power than requests have. For erasure and integrity alone; nothing is pooled. */
public final class OwnerConnections {
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
}
