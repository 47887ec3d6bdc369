package org.stepwell.observation;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.core.evidence.Look;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.NotVisible;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A tablet's pass adds looks and reads nothing; what was sealed under its key the server opens. */
@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "STEPWELL_HOME=target/home-of-pass-test"})
@Import(TestDatabase.InSpring.class)
class TabletPassTest {
    private static final String PASSWORD = "a-password-of-the-tests";

    @LocalServerPort
    private int port;
    @Autowired
    private DataSource dataSource;
    @Autowired
    private TransactionTemplate transaction;
    @Autowired
    private ObservationService observations;
    private final JsonMapper json = JsonMapper.builder().build();
    private final HttpClient http = HttpClient.newHttpClient();
    private final String device = UUID.randomUUID().toString();
    private ApiClient teacher;
    private String classId;

    @BeforeEach
    void signsTheTeacherIn() {
        teacher = signedIn("teacher@sample");
        classId = json.readTree(teacher.get("/api/table").body()).get("class").get("id").asString();
    }

    private ApiClient signedIn(String name) {
        ApiClient client = new ApiClient(port);
        assertThat(client.signIn(name, PASSWORD).headers().firstValue("location").orElse("")).doesNotContain("login");
        return client;
    }

    private JsonNode issue(ApiClient adult, String... older) {
        HttpResponse<String> answer = adult.post("/api/table/pass", json.writeValueAsString(
                Map.of("class", classId, "device", device, "label", "a test", "keys", List.of(older))));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return json.readTree(answer.body());
    }

    private HttpResponse<String> send(String method, String path, String pass, String body, String... headers) {
        try {
            HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
                    .header("X-Stepwell-Pass", pass).header("Content-Type", "application/json")
                    .method(method, body == null ? BodyPublishers.noBody() : BodyPublishers.ofString(body));
            return http.send(headers.length == 0 ? request.build() : request.headers(headers).build(),
                    BodyHandlers.ofString());
        } catch (java.io.IOException | InterruptedException failed) {
            throw new IllegalStateException(failed);
        }
    }

    private JsonNode looksByPass(String pass, String body) {
        HttpResponse<String> answer = send("POST", "/api/observations", pass, body);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return json.readTree(answer.body());
    }

    private static String look(UUID id, String child) {
        return look(id, child, "2026-05-08T09:00:00-05:00", "null");
    }

    private static String look(UUID id, String child, String at, String offset) {
        return "{\"id\":\"" + id + "\",\"observed_at\":\"" + at + "\",\"child\":\"" + child + "\",\"skill\":\"T05\","
                + "\"task\":\"17\",\"step\":3,\"help\":\"none\",\"kind\":\"table\",\"tags\":[],\"note\":null,"
                + "\"clock_offset_ms\":" + offset + "}";
    }

    private String seal(JsonNode issued, String keyId, UUID id, String content) throws Exception {
        byte[] nonce = new byte[12];
        new java.security.SecureRandom().nextBytes(nonce);
        Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
        cipher.init(Cipher.ENCRYPT_MODE, new SecretKeySpec(Base64.getDecoder().decode(
                issued.get("keys").get(keyId).asString()), "AES"), new GCMParameterSpec(128, nonce));
        cipher.updateAAD(("look " + id).getBytes(StandardCharsets.UTF_8));
        Base64.Encoder text = Base64.getUrlEncoder().withoutPadding();
        return "{\"id\":\"" + id + "\",\"sealed\":\"1." + keyId + "." + text.encodeToString(nonce) + "."
                + text.encodeToString(cipher.doFinal(content.getBytes(StandardCharsets.UTF_8))) + "\"}";
    }

    @Test
    void addsLooksWithoutASessionUnderItsAdult() {
        String pass = issue(teacher).get("pass").asString();
        UUID id = UUID.randomUUID();
        assertThat(looksByPass(pass, "[" + look(id, "q0602") + "]").get(0).get("status").asString())
                .isEqualTo("stored");
        assertThat(looksByPass(pass, "[" + look(id, "q0602") + "]").get(0).get("status").asString())
                .isEqualTo("duplicate");
        assertThat(teacher.get("/api/observations?child=q0602&from=2026-05-08&to=2026-05-08").body())
                .containsOnlyOnce(id.toString()).contains("\"observer\":\"teacher@sample\"");
    }

    @Test
    void readsNothingAtAllEvenBesideALiveSession() {
        String pass = issue(teacher).get("pass").asString();
        String cookies = teacher.cookies();
        assertThat(cookies).contains("JSESSIONID");
        List<String> routes = List.of("/", "/api/table", "/api/children", "/api/observations",
                "/api/observations?child=q0602", "/api/table/passes", "/api/children/q0602/note.pdf", "/api/nothing",
                "/class-map", "/suggestions", "/files", "/tablets", "/VAADIN/", "/table/", "/login",
                "/actuator/health/readiness", "/actuator/health", "/error");
        for (String route : routes) {
            for (String method : List.of("GET", "HEAD", "OPTIONS", "PUT", "DELETE", "PATCH")) {
                HttpResponse<String> answer = send(method, route, pass, null, "Cookie", cookies);
                assertThat(answer.statusCode()).as(method + " " + route).isIn(401, 404);
                assertThat(answer.body()).as(method + " " + route).isNullOrEmpty();
            }
        }
        for (String route : List.of("/api/table/pass", "/logout", "/login", "/api/observations/", "/?v-r=uidl", "/")) {
            assertThat(send("POST", route, pass, "[]", "Cookie", cookies).statusCode()).as(route).isIn(401, 404);
        }
        assertThat(send("POST", "/api/observations", pass, "[]").headers().allValues("set-cookie")).isEmpty();
        assertThat(teacher.get("/api/table").statusCode()).as("the session is untouched").isEqualTo(200);
    }

    @Test
    void isRefusedOnceRevokedExpiredOrForged() {
        JsonNode issued = issue(teacher);
        String pass = issued.get("pass").asString();
        JsonNode listed = json.readTree(teacher.get("/api/table/passes").body()).get(0);
        assertThat(listed.get("device").asString()).isEqualTo(device);
        String passId = listed.get("pass").asString();
        ApiClient other = signedIn("coteacher@sample");
        assertThat(other.delete("/api/table/passes/" + passId).statusCode()).isEqualTo(404);
        assertThat(other.get("/api/table/passes").body()).doesNotContain(passId);
        assertThat(send("POST", "/api/observations", pass, "[]").statusCode()).isEqualTo(200);
        assertThat(teacher.delete("/api/table/passes/" + passId).statusCode()).isEqualTo(204);
        assertThat(send("POST", "/api/observations", pass, "[]").statusCode()).isEqualTo(401);
        for (String forged : List.of("", "x", pass.substring(0, pass.length() - 1) + "!", pass.replaceFirst("1\\.1", "1.2"),
                "1.1." + "A".repeat(43))) {
            assertThat(send("POST", "/api/observations", forged, "[]").statusCode()).as(forged).isEqualTo(401);
        }
        String late = issue(teacher).get("pass").asString();
        // Only the owner may rewrite dates; this stands in for fourteen days going by.
        try (var superuser = superuser()) {
            superuser.createStatement().executeUpdate("update tablet_pass set expires_at = now() - interval '1 minute'"
                    + " where device_id = '" + device + "'");
        } catch (java.sql.SQLException failed) {
            throw new IllegalStateException(failed);
        }
        assertThat(send("POST", "/api/observations", late, "[]").statusCode()).isEqualTo(401);
    }

    private java.sql.Connection superuser() {
        try (var connection = dataSource.getConnection()) {
            return org.stepwell.platform.store.TestServer.shared().superuser(connection.getCatalog());
        } catch (java.sql.SQLException failed) {
            throw new IllegalStateException(failed);
        }
    }

    @Test
    void keepsOnlyAHashOfThePassAndOnlyAWrappedKey() {
        JsonNode issued = issue(teacher);
        String token = issued.get("pass").asString();
        byte[] key = Base64.getDecoder().decode(issued.get("keys").get(issued.get("key").asString()).asString());
        String rows = DistrictScope.in(1, () -> transaction.execute(s -> String.join("\n", JdbcClient.create(dataSource)
                .sql("select p::text from tablet_pass p union all select k::text from tablet_key k")
                .query(String.class).list())));
        assertThat(rows).contains(issued.get("key").asString()).doesNotContain(token)
                .doesNotContain(java.util.HexFormat.of().formatHex(key));
    }

    @Test
    void addsNoLookAtAChildThatWasNeverInItsClass() {
        String pass = issue(teacher).get("pass").asString();
        DistrictScope.in(1, () -> transaction.execute(s -> {
            JdbcClient jdbc = JdbcClient.create(dataSource);
            jdbc.sql("""
                    with c as (insert into classroom (district_id, school_id, name) select district_id, school_id,
                        'Room of ' || gen_random_uuid() from school limit 1 returning district_id, class_id),
                    k as (insert into child (district_id, school_key, given_name) select district_id, 'zz1', 'Otto'
                        from c on conflict do nothing returning district_id, child_id),
                    e as (insert into enrolment (district_id, class_id, child_id, starts_on)
                        select district_id, class_id, child_id, date '2025-08-01' from c join k using (district_id))
                    insert into class_adult (district_id, class_id, adult_id, role, starts_on)
                    select district_id, class_id, adult_id, 'teacher', date '2025-08-01' from c
                    join adult a using (district_id) where a.sign_in = 'teacher@sample'""").update();
            return true;
        }));
        JsonNode answer = looksByPass(pass, "[" + look(UUID.randomUUID(), "zz1") + "," + look(UUID.randomUUID(), "q0602")
                + "]");
        assertThat(answer.get(0).get("status").asString()).isEqualTo("refused");
        assertThat(answer.get(0).get("reason").asString()).contains("never in the class");
        assertThat(answer.get(1).get("status").asString()).isEqualTo("stored");
        assertThat(json.readTree(teacher.post("/api/observations", "[" + look(UUID.randomUUID(), "zz1") + "]").body())
                .get(0).get("status").asString()).isEqualTo("stored");
    }

    @Test
    void opensWhatTheTabletSealedForItsAdultAlone() throws Exception {
        JsonNode issued = issue(teacher);
        String key = issued.get("key").asString();
        UUID id = UUID.randomUUID();
        String sealed = seal(issued, key, id, "{\"record\":" + look(id, "q0603") + ",\"reason\":null}");
        ApiClient other = signedIn("coteacher@sample");
        JsonNode refused = json.readTree(other.post("/api/observations", "[" + sealed + "]").body()).get(0);
        assertThat(refused.get("status").asString()).isEqualTo("refused");
        assertThat(refused.get("id").asString()).isEqualTo(id.toString());
        assertThat(looksByPass(issued.get("pass").asString(), "[" + sealed + "]").get(0).get("status").asString())
                .isEqualTo("stored");
        assertThat(json.readTree(teacher.post("/api/observations", "[" + look(id, "q0603") + "]").body()).get(0)
                .get("status").asString()).as("the same look in the clear").isEqualTo("duplicate");
        UUID swapped = UUID.randomUUID();
        JsonNode wrong = looksByPass(issued.get("pass").asString(), "[" + sealed.replace(id.toString(),
                swapped.toString()) + ",{\"id\":\"" + swapped + "\",\"sealed\":\"rubbish\"}]");
        assertThat(wrong).extracting(w -> w.get("status").asString()).containsOnly("refused");
        assertThat(wrong.get(0).get("reason").asString()).contains("seal");
    }

    private <T> T as(String signIn, java.util.function.Supplier<T> work) {
        SignedIn adult = DistrictScope.in(1, () -> transaction.execute(s -> JdbcClient.create(dataSource)
                .sql("select adult_id, school_id, name from adult where sign_in = :name").param("name", signIn)
                .query((row, n) -> new SignedIn(1, row.getObject(1, UUID.class), row.getObject(2, UUID.class), signIn,
                        row.getString(3), java.time.ZoneId.of("America/Chicago"), false)).single()));
        SecurityContextHolder.getContext().setAuthentication(UsernamePasswordAuthenticationToken.authenticated(adult,
                null, List.of()));
        try {
            return work.get();
        } finally {
            SecurityContextHolder.clearContext();
        }
    }

    private void access(String signIn, String endsOn) {
        DistrictScope.in(1, () -> transaction.execute(s -> JdbcClient.create(dataSource).sql("update class_adult"
                + " set ends_on = cast(:end as date) where adult_id = (select adult_id from adult where sign_in = :name)")
                .param("end", endsOn).param("name", signIn).update()));
    }

    @Test
    void aLookByAnAdultWhoLostAccessWaitsForTheClassToTakeOrLeaveIt() {
        String pass = issue(signedIn("coteacher@sample")).get("pass").asString();
        UUID kept = UUID.randomUUID();
        UUID left = UUID.randomUUID();
        access("coteacher@sample", "2026-05-10");
        try {
            JsonNode answer = looksByPass(pass, "[" + look(kept, "q0605") + "," + look(left, "q0605") + "]");
            assertThat(answer).extracting(a -> a.get("status").asString()).containsOnly("stored");
            assertThat(answer.get(0).get("reason").asString()).contains("no longer see");
            UUID room = UUID.fromString(classId);
            assertThat(as("teacher@sample", () -> observations.ofClass(room))).extracting(Look::id)
                    .doesNotContain(kept, left);
            assertThat(as("teacher@sample", observations::undecided)).extracting(l -> l.look().id())
                    .contains(kept, left);
            assertThat(as("coteacher@sample", observations::undecided)).isEmpty();
            org.assertj.core.api.Assertions.assertThatThrownBy(() -> as("coteacher@sample",
                    () -> observations.decideWaiting(kept, true))).isInstanceOf(NotVisible.class);
            assertThat(as("teacher@sample", () -> observations.decideWaiting(kept, true))).isTrue();
            assertThat(as("teacher@sample", () -> observations.decideWaiting(left, false))).isTrue();
            assertThat(as("teacher@sample", () -> observations.decideWaiting(left, true))).as("the first word holds")
                    .isFalse();
            assertThat(as("teacher@sample", observations::undecided)).extracting(l -> l.look().id())
                    .doesNotContain(kept, left);
            assertThat(as("teacher@sample", () -> observations.ofClass(room))).extracting(Look::id).contains(kept)
                    .doesNotContain(left);
            assertThat(looksByPass(pass, "[" + look(kept, "q0605") + "]").get(0).get("status").asString())
                    .isEqualTo("duplicate");
        } finally {
            access("coteacher@sample", null);
        }
    }

    @Test
    void givesTheSameKeyToTheSameTabletAndOlderOnesOnAsking() {
        JsonNode first = issue(teacher);
        assertThat(issue(teacher).get("key").asString()).isEqualTo(first.get("key").asString());
        JsonNode elsewhere = json.readTree(teacher.post("/api/table/pass", json.writeValueAsString(Map.of("class",
                classId, "device", UUID.randomUUID().toString(), "keys", List.of(first.get("key").asString())))).body());
        assertThat(elsewhere.get("key").asString()).isNotEqualTo(first.get("key").asString());
        assertThat(elsewhere.get("keys").has(first.get("key").asString())).isTrue();
        JsonNode others = issue(signedIn("coteacher@sample"), first.get("key").asString());
        assertThat(others.get("keys").has(first.get("key").asString())).as("another adult's key").isFalse();
    }

    @Test
    void givesNoPassForAClassThatMayNotBeSeen() {
        assertThat(teacher.post("/api/table/pass", json.writeValueAsString(Map.of("class", UUID.randomUUID().toString(),
                "device", device))).statusCode()).isEqualTo(404);
        assertThat(new ApiClient(port).get("/api/table/passes").statusCode()).isEqualTo(401);
        assertThat(teacher.post("/api/table/pass", "{}", "").statusCode()).isEqualTo(403);
    }

    @Test
    void takesTheDayFromTheServersClockWhenTheTabletsIsWild() {
        UUID behind = UUID.randomUUID();
        UUID near = UUID.randomUUID();
        UUID ahead = UUID.randomUUID();
        UUID springForward = UUID.randomUUID();
        String pass = issue(teacher).get("pass").asString();
        String batch = "[" + look(behind, "q0604", "2026-05-06T23:30:00-05:00", "-86400000") + ","
                + look(near, "q0604", "2026-05-06T23:59:00-05:00", "-119000") + ","
                + look(ahead, "q0604", "2199-01-01T00:00:00Z", "null") + ","
                + look(springForward, "q0604", "2026-03-08T07:30:00Z", "0") + "]";
        JsonNode answer = looksByPass(pass, batch);
        assertThat(answer).extracting(a -> a.get("status").asString()).containsOnly("stored");
        assertThat(answer.get(2).get("reason").asString()).contains("check the tablet");
        assertThat(looksByPass(pass, batch)).extracting(a -> a.get("status").asString()).containsOnly("duplicate");
        assertThat(day("2026-05-07")).contains(behind.toString()).doesNotContain(near.toString())
                .contains("\"clock_flagged\":true");
        assertThat(day("2026-05-06")).contains(near.toString()).contains("\"clock_flagged\":false");
        assertThat(day("2199-01-01") + day("2198-12-31")).contains(ahead.toString()).contains("\"clock_flagged\":true");
        // 07:30 UTC is 01:30 in Chicago, half an hour before its clocks go forward.
        assertThat(day("2026-03-08")).contains(springForward.toString());
    }

    private String day(String day) {
        return teacher.get("/api/observations?child=q0604&from=" + day + "&to=" + day).body();
    }
}
