package org.stepwell.platform.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;

/** An operator's own PostgreSQL: with an owner and a run-time user, or with one privileged user who makes the other. */
final class OperatorDatabase {
    private final Path home;
    private final Settings.Database database;

    private OperatorDatabase(Path home, Settings.Database database) {
        this.home = home;
        this.database = database;
    }

    static OpenStore open(Path home, Settings.Database database) {
        OperatorDatabase operator = new OperatorDatabase(home, database);
        return database.ownerUser() == null ? operator.withOneUser() : operator.withTwoUsers(database.ownerUser());
    }

    private OpenStore withTwoUsers(String ownerUser) {
        if (ownerUser.equals(database.user())) {
            throw new StartProblem("STEPWELL_DB_USER and STEPWELL_DB_OWNER_USER are both " + ownerUser
                    + ". They must differ: the run-time user may own nothing. Run as a superuser:\n"
                    + sqlFor("stepwell_app", ownerUser));
        }
        Login owner = new Login(ownerUser, database.ownerPassword() == null ? "" : database.ownerPassword());
        Login runTime = new Login(database.user(), database.password());
        try (Connection connection = connect(owner); Statement statement = connection.createStatement()) {
            if (!DatabaseRoles.exists(statement, runTime.user())) {
                throw new StartProblem("The run-time user " + runTime.user() + " does not exist. Run as a superuser:\n"
                        + sqlFor(runTime.user(), ownerUser));
            }
            makeEraser(statement, runTime.user(), ownerUser);
        } catch (SQLException failed) {
            throw new StartProblem("The owner " + ownerUser + " cannot look up roles: " + failed.getMessage(), failed);
        }
        return OpenStore.on(database.url(), runTime, owner, DatabaseRoles.ERASER);
    }

    private OpenStore withOneUser() {
        Login owner = new Login(database.user(), database.password());
        try (Connection connection = connect(owner); Statement statement = connection.createStatement()) {
            if (!mayMakeRoles(statement)) {
                throw new StartProblem("The user " + owner.user() + " may not make roles, and no owner is named. Run "
                        + "as a superuser:\n" + sqlFor(owner.user(), "stepwell_owner")
                        + "\nthen set STEPWELL_DB_OWNER_USER and STEPWELL_DB_OWNER_PASSWORD to that owner.");
            }
            StoreHome secrets = new StoreHome(home);
            String name = connection.getCatalog() + "_app";
            Login runTime = new Login(name, secrets.secret("app-" + connection.getCatalog()));
            DatabaseRoles.login(statement, runTime);
            statement.execute("grant connect on database " + DatabaseRoles.name(statement, connection.getCatalog())
                    + " to " + DatabaseRoles.name(statement, name));
            makeEraser(statement, name, owner.user());
            return OpenStore.on(database.url(), runTime, owner, DatabaseRoles.ERASER);
        } catch (SQLException failed) {
            throw new StartProblem("The run-time role cannot be made by " + owner.user() + ": " + failed.getMessage(),
                    failed);
        }
    }

    private void makeEraser(Statement statement, String runTime, String owner) throws SQLException {
        boolean there = DatabaseRoles.exists(statement, DatabaseRoles.ERASER) && isMember(statement, owner);
        if (there) {
            return;
        }
        if (!mayMakeRoles(statement)) {
            throw new StartProblem("The role " + DatabaseRoles.ERASER + ", who alone may delete, is missing or not "
                    + "granted to " + owner + ". Run as a superuser:\n" + sqlFor(runTime, owner));
        }
        DatabaseRoles.eraser(statement, owner);
    }

    private static boolean isMember(Statement statement, String owner) throws SQLException {
        try (ResultSet row = statement.executeQuery("select pg_has_role(" + statement.enquoteLiteral(owner) + ", '"
                + DatabaseRoles.ERASER + "', 'MEMBER')")) {
            row.next();
            return row.getBoolean(1);
        }
    }

    private static boolean mayMakeRoles(Statement statement) throws SQLException {
        try (ResultSet row = statement.executeQuery(
                "select rolsuper or rolcreaterole from pg_roles where rolname = current_user")) {
            row.next();
            return row.getBoolean(1);
        }
    }

    private Connection connect(Login login) {
        try {
            DriverManager.setLoginTimeout(10);
            return DriverManager.getConnection(database.url(), login.user(), login.password());
        } catch (SQLException refused) {
            throw new StartProblem("PostgreSQL at " + database.url() + " refuses the user " + login.user() + ": "
                    + refused.getMessage() + " Check STEPWELL_DB_URL, users and passwords.", refused);
        }
    }

    private static String sqlFor(String runTime, String owner) {
        return """
                  create role "%2$s" login password '...';
                  create role "%1$s" login nobypassrls password '...';
                  create role %3$s nologin;
                  grant %3$s to "%2$s";
                  create database stepwell owner "%2$s";
                  grant connect on database stepwell to "%1$s";
                Leave out what exists already.""".formatted(runTime, owner, DatabaseRoles.ERASER);
    }
}
