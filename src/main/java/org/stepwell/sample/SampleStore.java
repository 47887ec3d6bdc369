package org.stepwell.sample;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.springframework.jdbc.core.StatementCallback;
import org.stepwell.platform.store.OwnerConnections;
import org.stepwell.platform.store.TableOrder;

/** Takes the sample's rows out of every table, as the only role that may delete. */
class SampleStore {
    private static final String OF_SAMPLE = "district_id in (select district_id from district where sample)";


    private final OwnerConnections connections;

    SampleStore(OwnerConnections connections) {
        this.connections = connections;
    }

    boolean made() {
        return asked(statement -> yes(statement, "select to_regclass('store_mark') is not null"));
    }

    boolean there() {
        return asked(statement -> yes(statement, "select exists (select 1 from district where sample)"));
    }

    boolean removedBefore() {
        return asked(statement -> yes(statement,
                "select exists (select 1 from store_mark where name = 'sample_removed')"));
    }

    private <T> T asked(StatementCallback<T> work) {
        return connections.asEraser("The sample cannot be removed", connection -> {
            try (Statement statement = connection.createStatement()) {
                return work.doInStatement(statement);
            }
        });
    }

    private static boolean yes(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getBoolean(1);
        }
    }

    /** Deletes every row of the sample and notes that it was taken out, all or nothing; gives the number of rows. */
    int remove() {
        return asked(statement -> {
            List<String> tables = TableOrder.childrenFirst(statement);
            // Nobody adds a row that names the sample while it goes.
            statement.execute("lock table " + String.join(", ", tables) + " in share row exclusive mode");
            int rows = 0;
            for (String table : tables) {
                rows += statement.executeUpdate("delete from " + table + " where " + OF_SAMPLE);
            }
            statement.executeUpdate("insert into store_mark (name) values ('sample_removed') on conflict do nothing");
            return rows;
        });
    }
}
