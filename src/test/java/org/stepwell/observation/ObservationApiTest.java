package org.stepwell.observation;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.platform.security.DistrictScope;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class ObservationApiTest {
    private static final String PASSWORD = "a-password-of-the-tests";

    @LocalServerPort
    private int port;
    @Autowired
    private DataSource dataSource;
    @Autowired
    private TransactionTemplate transaction;
    private final JsonMapper json = JsonMapper.builder().build();
    private ApiClient teacher;

    @BeforeEach
    void signsTheTeacherIn() {
        teacher = new ApiClient(port);
        assertThat(teacher.signIn("teacher@sample", PASSWORD).headers().firstValue("location").orElse(""))
                .endsWith("/").doesNotContain("login");
    }

    private static String look(UUID id, String child, int step) {
        return "{\"id\":\"" + id + "\",\"observed_at\":\"2026-05-08T09:00:00-05:00\",\"child\":\"" + child
                + "\",\"skill\":\"T05\",\"task\":\"17\",\"step\":" + step
                + ",\"help\":\"none\",\"kind\":\"table\",\"tags\":[\"said\"],\"note\":null,\"surprise\":1}";
    }

    private JsonNode answers(HttpResponse<String> response) {
        assertThat(response.statusCode()).as(response.body()).isEqualTo(200);
        return json.readTree(response.body());
    }

    @Test
    void storesALookOnceHoweverOftenItIsSent() {
        UUID id = UUID.randomUUID();
        assertThat(answers(teacher.post("/api/observations", "[" + look(id, "q0602", 3) + "]")).get(0)
                .get("status").stringValue()).isEqualTo("stored");
        for (int again = 0; again < 3; again++) {
            JsonNode answer = answers(teacher.post("/api/observations", "[" + look(id, "q0602", 3) + "]")).get(0);
            assertThat(answer.get("status").stringValue()).isEqualTo("duplicate");
            assertThat(answer.get("id").stringValue()).isEqualTo(id.toString());
        }
        assertThat(teacher.get("/api/observations?child=q0602&from=2026-05-08&to=2026-05-08").body())
                .containsOnlyOnce(id.toString()).contains("\"observer\":\"teacher@sample\"");
    }

    @Test
    void storesALookOnceWhenManyDevicesSendItAtTheSameMoment() {
        UUID id = UUID.randomUUID();
        List<CompletableFuture<String>> sent = Stream.generate(() -> CompletableFuture.supplyAsync(() ->
                answers(teacher.post("/api/observations", "[" + look(id, "q0602", 3) + "]")).get(0).get("status")
                        .stringValue(), task -> Thread.ofVirtual().start(task))).limit(30).toList();
        assertThat(sent.stream().map(CompletableFuture::join).sorted().toList())
                .containsOnly("stored", "duplicate").containsOnlyOnce("stored");
        assertThat(teacher.get("/api/observations?child=q0602&from=2026-05-08&to=2026-05-08").body())
                .containsOnlyOnce(id.toString());
    }

    @Test
    void anIdOfAHiddenLookIsRefusedWithoutAWordOfItAndNothingIsOverwritten() {
        UUID hidden = UUID.randomUUID();
        assertThat(answers(teacher.post("/api/observations", "[" + look(hidden, "q0601", 2) + "]")).get(0)
                .get("status").stringValue()).isEqualTo("stored");
        ApiClient specialist = new ApiClient(port);
        specialist.signIn("specialist@sample", PASSWORD);
        String shared = json.readTree(specialist.get("/api/children").body()).get(0).get("child").stringValue();
        JsonNode answer = answers(specialist.post("/api/observations", "[" + look(hidden, shared, 3) + "]")).get(0);
        assertThat(answer.get("status").stringValue()).isEqualTo("refused");
        assertThat(answer.get("reason").stringValue()).doesNotContain("q0601").contains("make a new id");
        assertThat(teacher.get("/api/observations?child=q0601&from=2026-05-08&to=2026-05-08").body())
                .contains(hidden.toString());
        assertThat(specialist.get("/api/observations?child=" + shared).body()).doesNotContain(hidden.toString());
    }

    @Test
    void saysWhyInTheLanguageThatWasChosen() {
        String sent = "[" + look(UUID.randomUUID(), "q0602", 9) + "]";
        assertThat(answers(teacher.post("/api/observations", sent)).get(0).get("reason").stringValue())
                .isEqualTo("step 9 is not in 1-5");
        ApiClient reader = new ApiClient(port);
        reader.signIn("teacher@sample", PASSWORD);
        reader.chooses("es");
        assertThat(answers(reader.post("/api/observations", sent)).get(0).get("reason").stringValue())
                .contains("paso 9").doesNotContain("is not in");
        reader.chooses("xx");
        assertThat(answers(reader.post("/api/observations", sent)).get(0).get("reason").stringValue())
                .isEqualTo("step 9 is not in 1-5");
    }

    @Test
    void refusesOneBadLookAndStoresTheRest() {
        UUID taken = UUID.randomUUID();
        UUID good = UUID.randomUUID();
        teacher.post("/api/observations", "[" + look(taken, "q0602", 3) + "]");
        JsonNode answers = answers(teacher.post("/api/observations", "[" + look(UUID.randomUUID(), "q0602", 9) + ","
                + look(UUID.randomUUID(), "nobody", 3) + "," + look(taken, "q0602", 4) + ",7," + look(good, "q0603", 5)
                + "]"));
        List<String> status = new ArrayList<>();
        answers.forEach(a -> status.add(a.get("status").stringValue()));
        assertThat(status).containsExactly("refused", "refused", "refused", "refused", "stored");
        assertThat(answers.get(0).get("reason").stringValue()).contains("step 9");
        assertThat(answers.get(1).get("reason").stringValue()).contains("nobody");
        assertThat(answers.get(2).get("reason").stringValue()).contains("other content");
    }

    @Test
    void answersWhatIsNoListOfLooks() {
        assertThat(teacher.post("/api/observations", "{oops").statusCode()).isEqualTo(400);
        assertThat(teacher.post("/api/observations", "{}").statusCode()).isEqualTo(400);
        assertThat(teacher.post("/api/observations", "[" + "{},".repeat(500) + "{}]").statusCode()).isEqualTo(413);
        assertThat(teacher.post("/api/observations", "[{\"note\":\"" + "x".repeat(10_000_000) + "\"}]").statusCode())
                .isEqualTo(413);
        assertThat(answers(teacher.post("/api/observations", "[]"))).isEmpty();
    }

    @Test
    void asksForASessionAndAToken() {
        ApiClient stranger = new ApiClient(port);
        assertThat(stranger.get("/api/children").statusCode()).isEqualTo(401);
        assertThat(teacher.post("/api/observations", "[]", "").statusCode()).isEqualTo(403);
        assertThat(teacher.post("/api/observations", "[]", "forged").statusCode()).isEqualTo(403);
        stranger.get("/login");
        assertThat(stranger.post("/login", "").statusCode()).isIn(302, 401);
        assertThat(new ApiClient(port).post("/login", "", "").statusCode()).isEqualTo(403);
    }

    @Test
    void answersTheSameForWhatIsNotThereAndWhatMayNotBeSeen() {
        ApiClient specialist = new ApiClient(port);
        specialist.signIn("specialist@sample", PASSWORD);
        assertThat(json.readTree(specialist.get("/api/children").body())).hasSize(4);
        HttpResponse<String> hidden = specialist.get("/api/observations?child=q0601");
        HttpResponse<String> absent = specialist.get("/api/observations?child=q9999");
        assertThat(hidden.statusCode()).isEqualTo(404);
        assertThat(absent.statusCode()).isEqualTo(404);
        assertThat(specialist.get("/api/nothing").statusCode()).isEqualTo(404);
        assertThat(answers(specialist.post("/api/observations", "[" + look(UUID.randomUUID(), "q0601", 3) + "]"))
                .get(0).get("status").stringValue()).isEqualTo("refused");
    }

    @Test
    void givesTheTableNoStepTierOrPast() {
        String body = teacher.get("/api/table").body();
        assertThat(body).contains("focusSkill").contains("Sofia").doesNotContain("support").doesNotContain("on_level")
                .doesNotContain("observed_at");
    }

    /** What to ask names a question and numbers; why they were chosen stays on the server. */
    @Test
    void givesTheTableOneQuestionForEachChildAndSkillAndNothingBehindIt() throws Exception {
        JsonNode table = json.readTree(teacher.get("/api/table").body());
        Map<String, Integer> questions = new HashMap<>();
        table.get("skills").forEach(s -> questions.put(s.get("code").stringValue(), s.get("questions").size()));
        assertThat(questions).hasSize(12).allSatisfy((skill, many) -> assertThat(many).isEqualTo(3));
        for (JsonNode child : table.get("children")) {
            assertThat(child.propertyNames()).containsExactlyInAnyOrder("child", "given_name", "label", "ask", "again");
            assertThat(child.get("ask").propertyNames()).containsExactlyInAnyOrderElementsOf(questions.keySet());
            for (JsonNode ask : child.get("ask")) {
                assertThat(ask.propertyNames()).isSubsetOf("question", "numbers");
                assertThat(ask.get("question").intValue()).isBetween(0, 2);
            }
        }
        JsonNode itzel = table.get("children").valueStream()
                .filter(c -> c.get("given_name").stringValue().equals("Itzel")).findFirst().orElseThrow();
        assertThat(itzel.at("/ask/T05/question").intValue()).as("seen with cubes on every day: hide them").isPositive();
    }

    @Test
    void refusesSignInAfterTooManyTries() {
        ApiClient guesser = new ApiClient(port);
        for (int guess = 0; guess < 10; guess++) {
            assertThat(guesser.signIn("lead@sample", "wrong " + guess).statusCode()).isEqualTo(302);
        }
        assertThat(guesser.signIn("lead@sample", PASSWORD).statusCode()).isEqualTo(429);
        assertThat(new ApiClient(port).signIn("coteacher@sample", PASSWORD).statusCode()).isEqualTo(302);
    }

    @Test
    void keepsFactsFromTheRunTimeUser() {
        JdbcClient jdbc = JdbcClient.create(dataSource);
        assertThat(jdbc.sql("select current_user").query(String.class).single()).isNotEqualTo("postgres")
                .doesNotContain("owner");
        assertThat(jdbc.sql("select rolsuper or rolbypassrls from pg_roles where rolname = current_user")
                .query(Boolean.class).single()).isFalse();
        for (String change : List.of("update observation set step = 1", "delete from observation",
                "update tier_decision set reason = ''", "truncate observation")) {
            assertThat(failure(change)).as(change).contains("permission denied");
        }
        assertThat(looksSeenBy(2)).isZero();
        assertThat(looksSeenBy(1)).isGreaterThan(600);
        assertThat(jdbc.sql("select count(*) from observation").query(Integer.class).single()).isZero();
    }

    private int looksSeenBy(int district) {
        Integer count = DistrictScope.in(district, () -> transaction.execute(s -> JdbcClient.create(dataSource)
                .sql("select count(*) from observation").query(Integer.class).single()));
        return count == null ? -1 : count;
    }

    private String failure(String sql) {
        try {
            DistrictScope.in(1, () -> transaction.execute(s -> JdbcClient.create(dataSource).sql(sql).update()));
            return "nothing stopped it";
        } catch (DataAccessException refused) {
            return String.valueOf(refused.getMostSpecificCause().getMessage());
        }
    }
}
