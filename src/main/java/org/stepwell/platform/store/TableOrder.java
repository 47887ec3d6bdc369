package org.stepwell.platform.store;

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

/** Tables of the live schema in an order in which rows may go, or come. */
public final class TableOrder {
    private static final String ALL = """
            select c.oid::regclass::text from pg_class c
            where c.relkind in ('r', 'p') and not c.relispartition and c.relnamespace = 'public'::regnamespace
              and c.relname <> 'flyway_schema_history'""";
    private static final String OF_DISTRICTS = ALL + """
             and exists (select from pg_attribute a where a.attrelid = c.oid and a.attname = 'district_id'
               and not a.attisdropped)""";

    private TableOrder() {
    }

    /**
     * Every table of districts, each before those it points to; the directory of districts last.
     *
     * @throws SQLException when the catalog cannot be read
     */
    public static List<String> childrenFirst(Statement statement) throws SQLException {
        return ordered(statement, OF_DISTRICTS);
    }

    /** Every table but Flyway's own, each after those it points to. */
    static List<String> parentsFirst(Statement statement) throws SQLException {
        return ordered(statement, ALL).reversed();
    }

    private static List<String> ordered(Statement statement, String tables) throws SQLException {
        Set<String> left = new TreeSet<>();
        try (ResultSet row = statement.executeQuery(tables)) {
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
