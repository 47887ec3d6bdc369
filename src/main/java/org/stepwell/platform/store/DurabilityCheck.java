package org.stepwell.platform.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.stepwell.platform.StartProblem;

/** Refuses a PostgreSQL that may lose what it acknowledged, or a run-time user who could step around the rules. */
final class DurabilityCheck {
    private static final int OLDEST = 150000;

    private DurabilityCheck() {
    }

    /**
     * Looks with the eyes of the run-time user.
     *
     * @param runTime a connection of the run-time user
     * @throws StartProblem naming everything that is wrong and what to change
     */
    static void refuseUnlessSafe(Connection runTime) throws SQLException {
        List<String> problems = new ArrayList<>();
        try (Statement statement = runTime.createStatement()) {
            version(statement, problems);
            durable(statement, problems);
            powerless(statement, problems);
        }
        if (!problems.isEmpty()) {
            throw new StartProblem("This PostgreSQL cannot be used:\n  - " + String.join("\n  - ", problems));
        }
    }

    private static void version(Statement statement, List<String> problems) throws SQLException {
        int version = Integer.parseInt(one(statement, "show server_version_num"));
        if (version < OLDEST) {
            problems.add("it is version " + one(statement, "show server_version") + "; upgrade it to 15 or newer.");
        }
    }

    private static void durable(Statement statement, List<String> problems) throws SQLException {
        for (String setting : List.of("fsync", "full_page_writes", "synchronous_commit")) {
            if (one(statement, "show " + setting).equals("off")) {
                problems.add(setting + " is off, so a crash may lose looks that were acknowledged; set " + setting
                        + " = on in postgresql.conf (and for no role or database to off) and reload it.");
            }
        }
    }

    private static void powerless(Statement statement, List<String> problems) throws SQLException {
        String user = one(statement, "select current_user");
        if (any(statement, "select 1 from pg_roles where rolsuper and pg_has_role(current_user, oid, 'MEMBER')")) {
            problems.add("the run-time user " + user + " is, or may become, a superuser; run: alter role \"" + user
                    + "\" nosuperuser; or name another STEPWELL_DB_USER.");
        } else if (any(statement,
                "select 1 from pg_roles where rolbypassrls and pg_has_role(current_user, oid, 'MEMBER')")) {
            problems.add("the run-time user " + user + " is, or may become, a user who steps around row-level "
                    + "security; run: alter role \"" + user + "\" nobypassrls;");
        }
        if (any(statement, "select 1 from pg_class where relkind in ('r','p','v','m','S') "
                + "and pg_has_role(current_user, relowner, 'MEMBER') and relnamespace not in "
                + "(select oid from pg_namespace where nspname like 'pg\\_%' or nspname = 'information_schema')")) {
            problems.add("the run-time user " + user + " owns tables, or may become their owner; run as a superuser: "
                    + "reassign owned by \"" + user + "\" to the owner role, and take it out of that role.");
        }
    }

    private static String one(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getString(1);
        }
    }

    private static boolean any(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            return row.next();
        }
    }
}
