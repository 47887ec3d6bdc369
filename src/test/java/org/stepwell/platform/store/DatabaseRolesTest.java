package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;

class DatabaseRolesTest {
    private final TestServer server = TestServer.shared();
    private OpenStore store;

    @TempDir
    Path home;

    @BeforeEach
    void make() {
        store = server.bareStore();
    }

    @AfterEach
    void drop() {
        server.drop(store);
    }

    private String database() {
        return store.url().substring(store.url().lastIndexOf('/') + 1);
    }

    private void asSuperuser(String... sql) throws SQLException {
        try (Connection connection = server.superuser(database()); Statement statement = connection.createStatement()) {
            for (String one : sql) {
                statement.execute(one);
            }
        }
    }

    private Connection runTime(OpenStore on) throws SQLException {
        return DriverManager.getConnection(on.url(), on.runTime().user(), on.runTime().password());
    }

    @Test
    void theRunTimeUserMakesNothingAndOnlyTheEraserDeletes() throws Exception {
        try (Connection owner = server.ownerConnections(store).owner(); Statement statement = owner.createStatement()) {
            statement.execute("create table mark (n int)");
            statement.execute("insert into mark values (1)");
            statement.execute("grant select, insert on mark to stepwell_app");
            statement.execute("grant select, delete on mark to stepwell_eraser");
        }
        try (Connection runTime = runTime(store); Statement statement = runTime.createStatement()) {
            statement.execute("insert into mark values (2)");
            assertThatThrownBy(() -> statement.execute("delete from mark")).hasMessageContaining("permission denied");
            assertThatThrownBy(() -> statement.execute("update mark set n = 3")).hasMessageContaining("denied");
            assertThatThrownBy(() -> statement.execute("create table mine (n int)")).hasMessageContaining("denied");
            assertThatThrownBy(() -> statement.execute("set role stepwell_eraser")).hasMessageContaining("denied");
        }
        try (Connection eraser = server.ownerConnections(store).eraser();
                Statement statement = eraser.createStatement()) {
            assertThat(statement.executeUpdate("delete from mark")).isEqualTo(2);
        }
    }

    @Test
    void refusesARunTimeUserWhoOwnsTables() throws Exception {
        asSuperuser("create table mine (n int)", "alter table mine owner to stepwell_app");
        try (Connection runTime = runTime(store)) {
            assertThatThrownBy(() -> DurabilityCheck.refuseUnlessSafe(runTime)).isInstanceOf(StartProblem.class)
                    .hasMessageContaining("owns tables").hasMessageContaining("reassign owned");
        }
    }

    @Test
    void refusesASuperuserAndOneWhoStepsAroundRowSecurity() throws Exception {
        try (Connection superuser = server.superuser(database())) {
            assertThatThrownBy(() -> DurabilityCheck.refuseUnlessSafe(superuser)).isInstanceOf(StartProblem.class)
                    .hasMessageContaining("superuser");
        }
        asSuperuser("create role " + database() + "_around login bypassrls password 'x'");
        try (Connection around = DriverManager.getConnection(store.url(), database() + "_around", "x")) {
            assertThatThrownBy(() -> DurabilityCheck.refuseUnlessSafe(around)).isInstanceOf(StartProblem.class)
                    .hasMessageContaining("nobypassrls");
        }
        asSuperuser("drop role " + database() + "_around");
    }

    @Test
    void refusesASessionThatDoesNotWaitForTheDisk() throws Exception {
        try (Connection runTime = runTime(store); Statement statement = runTime.createStatement()) {
            DurabilityCheck.refuseUnlessSafe(runTime);
            statement.execute("set synchronous_commit = off");
            assertThatThrownBy(() -> DurabilityCheck.refuseUnlessSafe(runTime)).isInstanceOf(StartProblem.class)
                    .hasMessageContaining("synchronous_commit is off").hasMessageContaining("postgresql.conf");
        }
    }

    @Test
    void makesTheRunTimeRoleWithOnePrivilegedUser() throws Exception {
        asSuperuser("create role " + database() + "_admin login createrole password 'x'",
                "alter database " + database() + " owner to " + database() + "_admin",
                "grant stepwell_eraser to " + database() + "_admin");
        Settings.Database one = new Settings.Database(store.url(), database() + "_admin", "x", null, null);
        for (int start = 0; start < 2; start++) {
            OpenStore opened = OperatorDatabase.open(home, one);
            assertThat(opened.runTime().user()).isEqualTo(database() + "_app");
            try (Connection runTime = runTime(opened)) {
                DurabilityCheck.refuseUnlessSafe(runTime);
            }
        }
        asSuperuser("revoke all on database " + database() + " from " + database() + "_app",
                "alter database " + database() + " owner to stepwell_owner",
                "drop owned by " + database() + "_admin cascade", "drop role " + database() + "_app",
                "drop role " + database() + "_admin");
    }

    @Test
    void saysTheSqlWhenAUserMayNotMakeRolesOrARoleIsMissing() {
        Settings.Database plain = new Settings.Database(store.url(), store.runTime().user(),
                store.runTime().password(), null, null);
        assertThatThrownBy(() -> OperatorDatabase.open(home, plain)).isInstanceOf(StartProblem.class)
                .hasMessageContaining("may not make roles").hasMessageContaining("create role");
        Settings.Database missing = new Settings.Database(store.url(), "nobody_here", "x", store.owner().user(),
                store.owner().password());
        assertThatThrownBy(() -> OperatorDatabase.open(home, missing)).isInstanceOf(StartProblem.class)
                .hasMessageContaining("nobody_here does not exist").hasMessageContaining("create role");
    }
}
