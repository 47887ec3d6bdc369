package org.stepwell.integrity;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Savepoint;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestAdult;
import org.stepwell.TestDatabase;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.platform.store.TestServer;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Whoever may do everything in the database cannot change the record of access without {@code verify} finding it. */
@SpringBootTest(classes = Application.class, properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests",
        "stepwell.test=tampering"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext
class AccessTamperingTest {
    private static final int TIMES = 1000;
    private static final int LINES = 60;
    private static final String SAID = "lines of the record of access";
    /** Every column that says something, with another value it could have. */
    private static final List<String> CHANGES = List.of("at = at + interval '1 microsecond'",
            "at = at - interval '1 day'", "adult_id = gen_random_uuid()", "what = what || 'x'",
            "outcome = case outcome when 'given' then 'denied' else 'given' end",
            "party = case party when 'staff' then 'family' else 'staff' end",
            "interest = case interest when 'lead' then 'aide' else 'lead' end", "grant_id = gen_random_uuid()",
            "child_digest = encode(sha256(child_digest::bytea), 'hex')",
            "previous = encode(sha256(previous::bytea), 'hex')", "digest = encode(sha256(digest::bytea), 'hex')",
            "seq = seq + 1000", "district_id = district_id + 1");

    @Autowired
    private AccessRecordService record;
    @Autowired
    private RosterService roster;
    @Autowired
    private OpenStore store;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;

    @AfterEach
    void signsOut() {
        TestAdult.signOut();
    }

    private void writeLines() {
        TestAdult.signIn(jdbc, transaction, "teacher@sample");
        if (transaction.<Long>execute(s -> jdbc.sql("select count(*) from access_entry").query(Long.class).single())
                > 0) {
            return;
        }
        List<UUID> children = new ArrayList<>();
        for (String name : List.of("teacher@sample", "specialist@sample", "lead@sample")) {
            TestAdult.signIn(jdbc, transaction, name);
            children.addAll(roster.children().stream().map(ChildRow::childId).toList());
            for (int i = 0; i < LINES / 3 - 1; i++) {
                List<ChildRow> mine = roster.children();
                record.seen(mine.get(i % mine.size()).childId(), Seen.values()[i % Seen.values().length]);
            }
            record.denied(children.getFirst(), Seen.CHILD_PAGE);
        }
    }

    private static List<String> found(Connection connection) throws SQLException {
        return IntegrityStore.answers(connection, SAID).stream().flatMap(answer -> answer.wrong().stream())
                .collect(Collectors.toList());
    }

    /** One mischief of a kind drawn by lot; what it did, for the message of a failure. */
    private static List<String> mischief(Random lot) {
        int line = 1 + lot.nextInt(LINES);
        String at = " where district_id = (select min(district_id) from access_head) and seq ";
        return switch (lot.nextInt(6)) {
            case 0, 1 -> List.of("update access_entry set " + CHANGES.get(lot.nextInt(CHANGES.size())) + at + "= "
                    + line);
            case 2 -> List.of("delete from access_entry" + at + "= " + line);
            case 3 -> List.of("delete from access_entry" + at + ">= " + line);
            case 4 -> {
                int other = 1 + (line + lot.nextInt(LINES - 1)) % LINES;
                yield List.of("update access_entry set seq = 100000" + at + "= " + line,
                        "update access_entry set seq = " + line + at + "= " + other,
                        "update access_entry set seq = " + other + at + "= 100000");
            }
            default -> List.of("insert into access_entry select district_id, " + (LINES + 1) + ", at, adult_id, what,"
                    + " outcome, party, interest, grant_id, child_digest, previous, digest from access_entry" + at
                    + "= " + line);
        };
    }

    @Test
    void aThousandChangesRemovalsAndReorderingsAreAllFound() throws SQLException {
        writeLines();
        String url = store.url().split("\\?", 2)[0];
        try (Connection all = TestServer.shared().superuser(url.substring(url.lastIndexOf('/') + 1));
                Statement statement = all.createStatement()) {
            all.setAutoCommit(false);
            statement.execute("set session_replication_role = replica");
            assertThat(IntegrityStore.answers(all, SAID)).hasSize(2).first()
                    .satisfies(answer -> assertThat(answer.looked()).isEqualTo(LINES));
            assertThat(found(all)).isEmpty();
            Random lot = new Random(99_32);
            for (int i = 0; i < TIMES; i++) {
                List<String> done = mischief(lot);
                Savepoint before = all.setSavepoint();
                int rows = 0;
                for (String sql : done) {
                    rows += statement.executeUpdate(sql);
                }
                assertThat(rows).as("rows touched by %s", done).isPositive();
                assertThat(found(all)).as("number %d: %s", i, done).isNotEmpty();
                all.rollback(before);
            }
            assertThat(found(all)).isEmpty();
            all.rollback();
        }
    }

    /** Somebody who knows the form writes a line anew with its right digest: the next line does not follow on it. */
    @Test
    void aLineWrittenAnewWithItsOwnRightDigestIsFound() throws SQLException {
        writeLines();
        String url = store.url().split("\\?", 2)[0];
        try (Connection all = TestServer.shared().superuser(url.substring(url.lastIndexOf('/') + 1));
                Statement statement = all.createStatement()) {
            all.setAutoCommit(false);
            statement.execute("set session_replication_role = replica");
            for (String line : List.of("= 5", "= (select max(seq) from access_entry)")) {
                Savepoint before = all.setSavepoint();
                assertThat(statement.executeUpdate("update access_entry set party = 'family', interest = 'lead',"
                        + " digest = encode(sha256(convert_to(concat_ws('|', district_id, seq,"
                        + " (extract(epoch from at) * 1000000)::bigint, adult_id, what, outcome, 'family', 'lead',"
                        + " coalesce(grant_id::text, '-'), child_digest, previous), 'UTF8')), 'hex') where seq " + line))
                        .isEqualTo(1);
                assertThat(found(all)).isNotEmpty();
                all.rollback(before);
            }
            all.rollback();
        }
    }
}
