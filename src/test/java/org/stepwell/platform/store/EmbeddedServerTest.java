package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;

@Execution(ExecutionMode.SAME_THREAD)
class EmbeddedServerTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T08:00:00Z"), ZoneOffset.UTC);

    @TempDir
    Path home;

    private Settings settings() {
        return Settings.from(Map.of("STEPWELL_HOME", home.toString())::get);
    }

    private static String show(Connection connection, String sql) throws SQLException {
        try (var statement = connection.createStatement(); var row = statement.executeQuery(sql)) {
            row.next();
            return row.getString(1);
        }
    }

    private static Connection runTime(OpenStore store) throws SQLException {
        return DriverManager.getConnection(store.url(), store.runTime().user(), store.runTime().password());
    }

    private static Connection owner(OpenStore store) throws SQLException {
        return DriverManager.getConnection(store.url(), store.owner().user(), store.owner().password());
    }

    @Test
    void isDurableAndClosedAndKeepsItsRowsOverARestart() throws Exception {
        try (OpenStore store = OpenStore.open(settings(), CLOCK)) {
            try (Connection connection = runTime(store)) {
                for (String setting : List.of("fsync", "synchronous_commit", "full_page_writes", "data_checksums")) {
                    assertThat(show(connection, "show " + setting)).as(setting).isEqualTo("on");
                }
                assertThat(show(connection, "show listen_addresses")).isEqualTo("127.0.0.1");
                assertThat(show(connection, "select current_user")).isEqualTo("stepwell_app");
                DurabilityCheck.refuseUnlessSafe(connection);
            }
            assertThatThrownBy(() -> DriverManager.getConnection(store.url(), "postgres", ""))
                    .isInstanceOf(SQLException.class);
            assertThat(Files.readString(home.resolve("data/pg_hba.conf")).lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank()))
                    .isNotEmpty().allMatch(line -> line.endsWith("scram-sha-256"));
            for (String secret : List.of("superuser", "owner", "app")) {
                assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(
                        home.resolve("secret-" + secret)))).isEqualTo("rw-------");
            }
            try (Connection connection = owner(store); var statement = connection.createStatement()) {
                statement.execute("create table mark (n int)");
                statement.execute("insert into mark values (7)");
            }
            assertThatThrownBy(() -> OpenStore.open(settings(), CLOCK)).isInstanceOf(StartProblem.class)
                    .hasMessageContaining("already running").hasMessageContaining("2026-03-02T08:00:00Z")
                    .hasMessageContaining(Long.toString(ProcessHandle.current().pid()));
            OpenStore.sayServing(settings(), CLOCK, "http://localhost:1");
            assertThatThrownBy(() -> OpenStore.open(settings(), CLOCK)).hasMessageContaining("http://localhost:1");
            try (OpenStore joined = OpenStore.join(settings(), CLOCK); Connection connection = runTime(joined)) {
                assertThat(show(connection, "select current_user")).isEqualTo("stepwell_app");
            }
        }
        assertThat(home.resolve("data/postmaster.pid")).doesNotExist();
        try (OpenStore store = OpenStore.open(settings(), CLOCK); Connection connection = owner(store)) {
            assertThat(show(connection, "select n from mark")).isEqualTo("7");
        }
    }

    @Test
    void startsOverAPidFileOfAStranger() throws Exception {
        OpenStore.open(settings(), CLOCK).close();
        Files.writeString(home.resolve("data/postmaster.pid"), ProcessHandle.current().pid() + "\n" + home + "\n");
        try (OpenStore store = OpenStore.open(settings(), CLOCK); Connection connection = runTime(store)) {
            assertThat(connection.isValid(5)).isTrue();
        }
    }

    @Test
    void refusesAStoreOfAnotherMajorVersion() throws Exception {
        OpenStore.open(settings(), CLOCK).close();
        Files.writeString(home.resolve("data/PG_VERSION"), "17\n");
        assertThatThrownBy(() -> OpenStore.open(settings(), CLOCK)).isInstanceOf(StartProblem.class)
                .hasMessageContaining("made by PostgreSQL 17").hasMessageContaining("brings 18");
    }
}
