package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stepwell.TestDatabase;

class TestDatabaseTest {
    private static long count(DataSource on, String sql) {
        return JdbcClient.create(on).sql(sql).query(Long.class).single();
    }

    @Test
    void givesTheMigratedTablesToARunTimeUserWhoOwnsNone() throws SQLException {
        try (TestDatabase database = TestDatabase.fresh(); var connection = database.runTime().getConnection()) {
            DurabilityCheck.refuseUnlessSafe(connection);
            assertThat(count(database.runTime(), "select count(*) from pg_tables where schemaname = 'public'"
                    + " and tableowner = 'stepwell_owner' and tablename <> 'flyway_schema_history'")).isPositive();
            assertThat(count(database.runTime(), "select count(*) from pg_tables where tableowner = current_user"))
                    .isZero();
            assertThat(JdbcClient.create(database.runTime()).sql("select current_user").query(String.class).single())
                    .isEqualTo("stepwell_app");
        }
    }

    @Test
    void keepsTheRowsOfOneTestClassFromAnother() throws SQLException {
        try (TestDatabase one = TestDatabase.fresh(); TestDatabase other = TestDatabase.fresh();
                var owner = one.ownerConnections().owner(); var statement = owner.createStatement()) {
            statement.execute("create table only_here (n int)");
            String found = "select count(*) from pg_tables where tablename = 'only_here'";
            assertThat(count(one.runTime(), found)).isEqualTo(1);
            assertThat(count(other.runTime(), found)).isZero();
        }
    }
}
