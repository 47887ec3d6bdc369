package org.stepwell.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.test.annotation.DirtiesContext;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.platform.store.TestServer;
import org.stepwell.roster.Invitations;
import org.stepwell.roster.Invitations.Invitation;
import org.stepwell.roster.Invitations.Role;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "spring.application.name=sample-removal"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext
class SampleRemovalTest {
    private static final String OWN = "seven quiet herons";

    @LocalServerPort
    private int port;
    @Autowired
    private DataSource dataSource;
    @Autowired
    private OpenStore store;
    @Autowired
    private SampleStart start;
    @Autowired
    private SampleRemoval removal;
    @Autowired
    private AccountService accounts;

    /** Rows of each table, read from the live schema past every policy. */
    private Map<String, Integer> rows(String where) throws SQLException {
        String url = store.url().split("\\?", 2)[0];
        Map<String, Integer> counts = new TreeMap<>();
        try (Connection all = TestServer.shared().superuser(url.substring(url.lastIndexOf('/') + 1));
                Statement statement = all.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (ResultSet row = statement.executeQuery("select table_name from information_schema.columns"
                    + " where table_schema = 'public' and column_name = 'district_id'")) {
                while (row.next()) {
                    tables.add(row.getString(1));
                }
            }
            for (String table : tables) {
                try (ResultSet row = statement.executeQuery("select count(*) from " + table + " where " + where)) {
                    row.next();
                    counts.put(table, row.getInt(1));
                }
            }
        }
        return counts;
    }

    private static boolean in(ApiClient client) {
        return client.get("/api/children").statusCode() == 200;
    }

    @Test
    void leavesNoRowOfTheSampleAndEveryRowOfARealSchool() throws SQLException {
        String oneTime = new Invitations(dataSource, Clock.systemUTC()).add(new Invitation("ana@hill", "Ana Ruiz",
                Role.TEACHER, "Room 1", true, "Alder Hill", "America/Chicago"));
        ApiClient real = new ApiClient(port);
        real.form("/login/first", Map.of("username", "ana@hill", "password", oneTime, "chosen", OWN));
        real.signIn("ana@hill", OWN);
        ApiClient sample = new ApiClient(port);
        sample.signIn("teacher@sample", "a-password-of-the-tests");
        assertThat(in(sample)).isTrue();
        Map<String, Integer> before = rows("district_id = 1");
        Map<String, Integer> others = rows("district_id <> 1");
        assertThat(before.values().stream().filter(n -> n > 0).count()).isGreaterThan(12);
        assertThat(others.values().stream().filter(n -> n > 0).count()).isGreaterThan(5);

        assertThat(removal.remove()).isEqualTo(before.values().stream().mapToInt(n -> n).sum());

        assertThat(rows("district_id = 1")).allSatisfy((table, left) -> assertThat(left).as(table).isZero());
        assertThat(rows("district_id <> 1")).isEqualTo(others);
        assertThat(in(sample)).as("a session that was open").isFalse();
        sample.signIn("teacher@sample", "a-password-of-the-tests");
        assertThat(in(sample)).as("a new sign-in").isFalse();
        assertThat(in(real)).isTrue();
        assertThat(removal.remove()).isZero();

        start.run(new DefaultApplicationArguments());
        assertThat(rows("district_id = 1")).allSatisfy((table, left) -> assertThat(left).as(table).isZero());
    }

    @Test
    void anEmptyStoreThatItWasTakenOutOfStaysEmptyAtTheNextStart() throws SQLException {
        try (TestDatabase database = TestDatabase.fresh()) {
            SampleRemoval other = SampleRemoval.over(database.store());
            assertThat(other.there()).isFalse();
            assertThat(other.removedBefore()).isFalse();
            try (Connection all = database.superuser(); Statement statement = all.createStatement()) {
                statement.execute("insert into district (district_id, name, sample) values (1, 'Sample', true)");
            }
            assertThat(other.there()).isTrue();
            assertThat(other.remove()).isEqualTo(1);
            assertThat(other.removedBefore()).isTrue();
        }
    }
}
