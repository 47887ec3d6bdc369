package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.stepwell.TestDatabase;

class StoreSchemaTest {
    /** Two features were given numbers, and the one with the lower number was done later. */
    @Test
    void aLowerNumberThatCameLaterIsStillRun() throws SQLException {
        try (TestDatabase database = TestDatabase.fresh(); Connection all = database.superuser();
                Statement statement = all.createStatement()) {
            statement.execute("drop table erasure");
            statement.execute("alter table review_seal drop column first_digest");
            statement.execute("delete from flyway_schema_history where version = '029'");
            StoreSchema.migrate(database.store());
            try (ResultSet row = statement.executeQuery("select count(*) from erasure")) {
                assertThat(row.next()).isTrue();
            }
        }
    }
}
