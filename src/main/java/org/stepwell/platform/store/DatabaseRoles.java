package org.stepwell.platform.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.stepwell.platform.StartProblem;

/** Makes the three roles of a store, or makes sure of them. Safe to run again. */
final class DatabaseRoles {
    static final String ERASER = "stepwell_eraser";

    private DatabaseRoles() {
    }

    /** Makes all three as a superuser and gives the database to the owner; closes the connection. */
    static void makeAll(Connection superuser, String database, Login runTime, Login owner) {
        try (superuser; Statement statement = superuser.createStatement()) {
            superuser.setAutoCommit(false);
            login(statement, owner);
            login(statement, runTime);
            eraser(statement, owner.user());
            statement.execute("alter database " + name(statement, database) + " owner to "
                    + name(statement, owner.user()));
            statement.execute("revoke all on database " + name(statement, database) + " from public");
            statement.execute("grant connect on database " + name(statement, database) + " to "
                    + name(statement, runTime.user()));
            superuser.commit();
        } catch (SQLException failed) {
            throw new StartProblem("The database roles cannot be made: " + failed.getMessage(), failed);
        }
    }

    /** Makes or renews a user that may sign in and nothing else. */
    static void login(Statement statement, Login login) throws SQLException {
        if (!exists(statement, login.user())) {
            statement.execute("create role " + name(statement, login.user()) + " login nosuperuser nocreatedb "
                    + "nocreaterole nobypassrls password " + statement.enquoteLiteral(login.password()));
        } else {
            statement.execute("alter role " + name(statement, login.user()) + " password "
                    + statement.enquoteLiteral(login.password()));
        }
    }

    /** Makes the eraser and lets the owner become it. */
    static void eraser(Statement statement, String owner) throws SQLException {
        if (!exists(statement, ERASER)) {
            statement.execute("create role " + ERASER + " nologin nosuperuser nocreatedb nocreaterole nobypassrls");
        }
        try (var member = statement.executeQuery("select pg_has_role(" + statement.enquoteLiteral(owner) + ", '"
                + ERASER + "', 'MEMBER')")) {
            member.next();
            if (member.getBoolean(1)) {
                return;
            }
        }
        boolean options = statement.getConnection().getMetaData().getDatabaseMajorVersion() >= 16;
        statement.execute("grant " + ERASER + " to " + name(statement, owner)
                + (options ? " with inherit false, set true" : ""));
    }

    static boolean exists(Statement statement, String role) throws SQLException {
        try (var found = statement.executeQuery(
                "select 1 from pg_roles where rolname = " + statement.enquoteLiteral(role))) {
            return found.next();
        }
    }

    static String name(Statement statement, String identifier) throws SQLException {
        return statement.enquoteIdentifier(identifier, true);
    }
}
