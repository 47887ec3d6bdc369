package org.stepwell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestAdult;
import org.stepwell.TestDatabase;
import org.stepwell.integrity.Integrity;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.platform.store.OwnerConnections;
import org.stepwell.privacy.AccessLine;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Reader;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/**
 * 34 CFR 99.32 (a)(1): a record of each request for access and each disclosure; (a)(3): the parties and their interest.
 * 34 CFR 300.614: name of the party, date, purpose.
 */
@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT, properties = {
        "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=record"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext
class AccessRecordTest {
    private static final String PASSWORD = "a-password-of-the-tests";

    @LocalServerPort
    private int port;
    @Autowired
    private AccessRecordService record;
    @Autowired
    private RosterService roster;
    @Autowired
    private OpenStore store;
    @Autowired
    private OwnerConnections owners;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    private ChildRow shared;
    private ChildRow unshared;

    @BeforeEach
    void findsASharedChildAndAnother() {
        as("specialist@sample");
        List<UUID> reached = roster.children().stream().map(ChildRow::childId).toList();
        as("teacher@sample");
        shared = roster.children().stream().filter(c -> reached.contains(c.childId())).findFirst().orElseThrow();
        unshared = roster.children().stream().filter(c -> !reached.contains(c.childId())).findFirst().orElseThrow();
    }

    @AfterEach
    void signsOut() {
        TestAdult.signOut();
    }

    private void as(String name) {
        TestAdult.signIn(jdbc, transaction, name);
    }

    private ApiClient client(String name) {
        ApiClient client = new ApiClient(port);
        client.signIn(name, PASSWORD);
        return client;
    }

    private List<AccessLine> lines(ChildRow child) {
        as("teacher@sample");
        return record.lines(child.childId(), 1000);
    }

    private AccessLine newest(ChildRow child) {
        return lines(child).getFirst();
    }

    private void holds() {
        assertThat(Integrity.over(store).check()).allSatisfy(answer -> assertThat(answer.wrong()).isEmpty());
    }

    @Test
    void aPrintForHomeIsADisclosureToTheFamily() {
        int before = lines(shared).size();
        assertThat(client("teacher@sample").get("/api/children/" + shared.schoolKey() + "/note.pdf").statusCode())
                .isEqualTo(200);
        assertThat(lines(shared)).hasSize(before + 1);
        assertThat(newest(shared)).satisfies(line -> {
            assertThat(line.what()).isEqualTo("note_print");
            assertThat(line.party()).isEqualTo("family");
            assertThat(line.interest()).isEqualTo("teacher");
            assertThat(line.given()).isTrue();
        });
        holds();
    }

    @Test
    void whatASpecialistIsGivenRestsOnTheReasonOfTheGrant() {
        assertThat(client("specialist@sample").get("/api/observations?child=" + shared.schoolKey()).statusCode())
                .isEqualTo(200);
        assertThat(newest(shared)).satisfies(line -> {
            assertThat(line.what()).isEqualTo("looks_file");
            assertThat(line.interest()).isEqualTo("specialist");
            assertThat(line.reason()).isNotBlank();
        });
    }

    /** The denied stand in the record, and answer like children who do not exist. */
    @Test
    void whatIsDeniedIsWrittenDownAndAnswersLikeWhatDoesNotExist() {
        ApiClient specialist = client("specialist@sample");
        for (String path : List.of("/api/children/%s/note.pdf", "/api/children/%s/access.csv", "/api/children/%s/records.zip",
                "/api/observations?child=%s")) {
            int before = lines(unshared).size();
            HttpResponse<String> hidden = specialist.get(path.formatted(unshared.schoolKey()));
            HttpResponse<String> nothing = specialist.get(path.formatted("no-such-child"));
            assertThat(hidden.statusCode()).as(path).isEqualTo(404);
            assertThat(nothing.statusCode()).as(path).isEqualTo(404);
            assertThat(hidden.body().replaceAll("\"(timestamp|path|requestId)\":\"[^\"]*\"", ""))
                    .isEqualTo(nothing.body().replaceAll("\"(timestamp|path|requestId)\":\"[^\"]*\"", ""))
                    .doesNotContain(unshared.givenName());
            assertThat(lines(unshared)).hasSize(before + 1);
            assertThat(newest(unshared)).satisfies(line -> {
                assertThat(line.given()).isFalse();
                assertThat(line.interest()).isEqualTo("none");
            });
        }
        holds();
    }

    @Test
    void aRosterAndAllLooksOfAClassAreWrittenDownPerChild() {
        UUID room = roster.classes().getFirst().classId();
        roster.export(room);
        for (ChildRow child : roster.children(room)) {
            assertThat(newest(child).what()).as(child.label()).isEqualTo("roster_file");
        }
        holds();
    }

    @Test
    void theRecordGoesOutAsAFileWhoseLastLineIsAboutItself() {
        as("teacher@sample");
        record.seen(unshared.childId(), Seen.CHILD_PAGE);
        HttpResponse<String> file = client("lead@sample").get("/api/children/" + unshared.schoolKey() + "/access.csv");
        assertThat(file.statusCode()).isEqualTo(200);
        List<String> rows = file.body().lines().toList();
        assertThat(rows.getFirst()).isEqualTo("line,at,adult,what,outcome,party,interest,reason,digest");
        assertThat(rows).anyMatch(row -> row.contains(",child_page,given,staff,teacher,"));
        assertThat(rows.getLast()).contains(",record_file,given,staff,lead,");
        assertThat(file.body()).doesNotContain(unshared.givenName());
    }

    @Test
    void aSpecialistSeesWhoCanSeeASharedChildAndNotWhoDid() {
        as("specialist@sample");
        assertThat(record.readers(shared.childId())).extracting(Reader::interest)
                .contains("teacher", "specialist", "lead");
        assertThat(record.mayRead(shared.childId())).isFalse();
        assertThatThrownBy(() -> record.lines(shared.childId(), 10)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> record.readers(unshared.childId())).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> record.seen(unshared.childId(), Seen.CHILD_PAGE)).isInstanceOf(NotVisible.class);
    }

    /** What is not given after all leaves no line, and the chain goes on without a gap. */
    @Test
    void aLineStandsOrFallsWithItsTransaction() {
        int before = lines(shared).size();
        transaction.executeWithoutResult(status -> {
            record.seen(shared.childId(), Seen.PLAN_PAGE);
            status.setRollbackOnly();
        });
        assertThat(lines(shared)).hasSize(before);
        record.seen(shared.childId(), Seen.PLAN_PAGE);
        holds();
    }

    @Test
    void manyAtOnceMakeOneChain() {
        int before = lines(shared).size();
        List<CompletableFuture<Void>> all = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            all.add(CompletableFuture.runAsync(() -> {
                as("teacher@sample");
                for (int j = 0; j < 10; j++) {
                    record.seen(List.of(shared.childId(), unshared.childId()), Seen.CHILD_PAGE);
                }
                TestAdult.signOut();
            }));
        }
        all.forEach(CompletableFuture::join);
        assertThat(lines(shared)).hasSize(before + 60);
        holds();
    }

    @Test
    void theRunTimeUserCanNeitherChangeNorRemoveALine() {
        record.seen(shared.childId(), Seen.CHILD_PAGE);
        assertThat(transaction.<String>execute(s -> jdbc.sql("select current_user").query(String.class).single()))
                .isEqualTo(store.runTime().user());
        for (String sql : List.of("update access_entry set what = 'x'", "delete from access_entry",
                "truncate access_entry", "delete from access_key", "update access_key set key = key")) {
            assertThatThrownBy(() -> transaction.execute(s -> jdbc.sql(sql).update())).as(sql)
                    .isInstanceOf(DataAccessException.class);
        }
    }

    /** With the key of a child gone the lines stay, the chain holds, and no line leads to the child any more. */
    @Test
    void aDestroyedKeyLeavesAChainThatHoldsAndNamesNobody() throws SQLException {
        ChildRow gone = roster.children().getLast();
        record.seen(gone.childId(), Seen.CHILD_PAGE);
        assertThat(lines(gone)).isNotEmpty();
        try (Connection eraser = owners.eraser(); Statement statement = eraser.createStatement()) {
            assertThat(statement.executeUpdate("delete from access_key where child_id = '" + gone.childId() + "'"))
                    .isEqualTo(1);
        }
        assertThat(lines(gone)).isEmpty();
        holds();
    }
}
