package org.stepwell.sample;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.jdbc.core.StatementCallback;
import org.stepwell.platform.StartProblem;
import org.stepwell.platform.store.OwnerConnections;

/** Takes the sample's rows out of every table, as the only role that may delete. */
class SampleStore {
    private static final String OF_SAMPLE = "district_id in (select district_id from district where sample)";

    private static final String DEADLOCK = "40P01";
    private static final int TRIES = 5;

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

    /** Does all of the work or nothing; again where others were in the way. */
    private <T> T asked(StatementCallback<T> work) {
        for (int left = TRIES - 1;; left--) {
            try (Connection eraser = connections.eraser(); Statement statement = eraser.createStatement()) {
                eraser.setAutoCommit(false);
                T done = work.doInStatement(statement);
                eraser.commit();
                return done;
            } catch (SQLException failed) {
                if (left == 0 || !DEADLOCK.equals(failed.getSQLState())) {
                    throw new StartProblem("The sample cannot be removed: " + failed.getMessage(), failed);
                }
            }
        }
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
            List<String> tables = childrenFirst(statement);
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

    /** Every table of districts, each before those it points to; the directory of districts last. */
    private static List<String> childrenFirst(Statement statement) throws SQLException {
        Set<String> left = new TreeSet<>();
        try (ResultSet row = statement.executeQuery("""
                select c.oid::regclass::text from pg_class c join pg_attribute a on a.attrelid = c.oid
                where c.relkind in ('r', 'p') and not c.relispartition and c.relnamespace = 'public'::regnamespace
                  and a.attname = 'district_id' and not a.attisdropped""")) {
            while (row.next()) {
                left.add(row.getString(1));
            }
        }
        Map<String, Set<String>> pointedAtBy = new HashMap<>();
        try (ResultSet row = statement.executeQuery("""
                select conrelid::regclass::text, confrelid::regclass::text from pg_constraint
                where contype = 'f' and conrelid <> confrelid and connamespace = 'public'::regnamespace""")) {
            while (row.next()) {
                pointedAtBy.computeIfAbsent(row.getString(2), table -> new LinkedHashSet<>()).add(row.getString(1));
            }
        }
        List<String> order = new ArrayList<>();
        while (!left.isEmpty()) {
            String next = left.stream().filter(table -> pointedAtBy.getOrDefault(table, Set.of()).stream()
                    .noneMatch(left::contains)).findFirst()
                    .orElseThrow(() -> new IllegalStateException("tables point to each other in a circle: " + left));
            left.remove(next);
            order.add(next);
        }
        return order;
    }
}
