package org.stepwell.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpResponse;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.TestAdult;
import org.stepwell.core.problem.Refused;
import org.stepwell.integrity.Integrity;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.records.Erasure.Why;
import org.stepwell.roster.ChildRow;

/** Who may erase, and what everybody sees of it: screens, tablets, the record of access. */
@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=erasure"})
class ErasureServiceTest extends OnTheSample {
    @LocalServerPort
    private int port;
    @Autowired
    private ErasureService erasure;
    @Autowired
    private AccessRecordService record;
    @Autowired
    private OpenStore store;

    private String look(UUID id, String child, OffsetDateTime at) {
        return "[{\"id\":\"" + id + "\",\"observed_at\":\"" + at + "\",\"child\":\"" + child
                + "\",\"skill\":\"T05\",\"task\":\"17\",\"step\":3,\"help\":\"none\",\"kind\":\"table\",\"tags\":[]}]";
    }

    private long lines() {
        return transaction.execute(status -> jdbc.sql("select count(*) from access_entry").query(Long.class).single());
    }

    private boolean kept(UUID look) {
        return transaction.execute(status -> jdbc.sql("select exists (select 1 from observation where observation_id = :id)")
                .param("id", look).query(Boolean.class).single());
    }

    @Test
    void aLeadErasesAChildAndTabletsLearnOfIt() {
        ChildRow child = roster.byKey("q0603").orElseThrow();
        ApiClient teacher = new ApiClient(port);
        teacher.signIn("teacher@sample", PASSWORD);
        assertThat(teacher.get("/api/table").body()).contains("\"q0603\"");
        record.seen(child.childId(), Seen.CHILD_PAGE);
        assertThat(record.lines(child.childId(), 5)).isNotEmpty();
        long lines = lines();
        for (String other : List.of("teacher@sample", "coteacher@sample", "specialist@sample")) {
            as(other);
            assertThatThrownBy(() -> erasure.preview(child.childId())).as(other).isInstanceOf(NotVisible.class);
            assertThatThrownBy(() -> erasure.erase(child.childId(), "q0603", Why.LAW)).as(other)
                    .isInstanceOf(NotVisible.class);
        }
        as("lead@sample");
        assertThat(erasure.preview(child.childId()).rows()).containsKeys("child", "observation", "access_key");
        assertThatThrownBy(() -> erasure.erase(child.childId(), "q0602", Why.LAW)).isInstanceOf(Refused.class);
        assertThat(roster.byKey("q0603")).isPresent();

        assertThat(erasure.erase(child.childId(), " q0603 ", Why.FAMILY_ASKED)).isGreaterThan(10);

        assertThat(roster.byKey("q0603")).isEmpty();
        assertThat(lines()).as("the record of access keeps its lines").isEqualTo(lines);
        assertThat(Integrity.over(store).check()).allSatisfy(answer -> assertThat(answer.wrong())
                .as(answer.question()).isEmpty());
        assertThatThrownBy(() -> erasure.preview(child.childId())).isInstanceOf(NotVisible.class);
        String feed = teacher.get("/api/table").body();
        assertThat(feed).contains("\"q0602\"").doesNotContain("\"q0603\"").doesNotContain(child.childId().toString());

        OffsetDateTime tapped = OffsetDateTime.now(ZONE).minusDays(1);
        UUID late = UUID.randomUUID();
        assertThat(teacher.post("/api/observations", look(late, "q0603", tapped)).body())
                .contains("refused", "all records with the id \\\"q0603\\\" were erased on " + today);
        assertThat(kept(late)).isFalse();

        as("teacher@sample");
        roster.addChild(room, "q0603", "Juno", "");
        assertThat(teacher.post("/api/observations", look(late, "q0603", tapped)).body())
                .as("a look at the child before, now that the id is another's").contains("refused", "were erased");
        UUID fresh = UUID.randomUUID();
        assertThat(teacher.post("/api/observations", look(fresh, "q0603", OffsetDateTime.now(ZONE).plusSeconds(1)))
                .body()).contains("stored");
        assertThat(kept(late)).isFalse();
        assertThat(kept(fresh)).isTrue();
    }

    /** Somebody holds the table of looks; erasure waits for it, and a look at the child behind erasure. */
    @Test
    void aLookSentAtTheMomentOfErasureIsRefusedByName() {
        ChildRow child = roster.byKey("q0604").orElseThrow();
        ApiClient teacher = new ApiClient(port);
        teacher.signIn("teacher@sample", PASSWORD);
        assertThat(teacher.get("/api/children").statusCode()).isEqualTo(200);
        UUID late = UUID.randomUUID();
        CompletableFuture<Integer> erased = new CompletableFuture<>();
        CompletableFuture<HttpResponse<String>> answer = new CompletableFuture<>();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("lock table observation in row exclusive mode").update();
            erased.completeAsync(() -> {
                as("lead@sample");
                try {
                    return erasure.erase(child.childId(), "q0604", Why.LAW);
                } finally {
                    TestAdult.signOut();
                }
            }, Thread::startVirtualThread);
            untilWaiting(1);
            answer.completeAsync(() -> teacher.post("/api/observations", look(late, "q0604",
                    OffsetDateTime.now(ZONE).minusMinutes(1))), Thread::startVirtualThread);
            untilWaiting(2);
        });
        assertThat(erased.join()).isGreaterThan(10);
        assertThat(answer.join().statusCode()).isEqualTo(200);
        assertThat(answer.join().body()).contains("refused", "were erased");
        assertThat(kept(late)).isFalse();
    }

    private void untilWaiting(int many) {
        Awaitility.await().until(() -> jdbc.sql("select count(*) from pg_locks where not granted"
                + " and relation = 'observation'::regclass").query(Integer.class).single() >= many);
    }
}
