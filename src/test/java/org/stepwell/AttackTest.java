package org.stepwell;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.security.SessionService;
import org.stepwell.platform.security.SignInAttempts;
import org.stepwell.platform.security.SignedIn;

/**
 * Attacks tried at the doors. Ids of others and routes of others are tried by {@link RightsWalkTest} and
 * {@link RoutesWalkTest}, what no program would send by {@link ApiFuzzTest}.
 */
class AttackTest extends InTwoDistricts {
    private static final String PASSWORD = "four plain words of ours";
    private static final String PLANTED = "0123456789ABCDEF0123456789ABCDEF";
    /** What makes a page of a text; where none of it stands, a text stays a text. */
    private static final Pattern MARKUP_OF_TEXT = Pattern.compile("innerHTML|outerHTML|insertAdjacentHTML|document\\.write"
            + "|component\\.Html;|createContextualFragment|srcdoc");

    private static final Pattern SCRIPT_OF_TEXT = Pattern.compile("\\beval\\(|new Function\\(|javascript:");

    private final HttpClient plain = HttpClient.newHttpClient();

    @Autowired
    private SessionService sessions;

    private ApiClient teacher() {
        SignedIn adult = grown.as("t");
        accounts.setPassword(adult.districtId(), adult.adultId(), PASSWORD);
        TestAdult.signOut();
        ApiClient client = new ApiClient(port);
        client.signIn(grown.in("t"), PASSWORD);
        client.get("/login");
        assertThat(client.get("/api/children").statusCode()).isEqualTo(200);
        return client;
    }

    private HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create("http://localhost:" + port + path));
    }

    private HttpResponse<String> answer(HttpRequest.Builder request) {
        try {
            return plain.send(request.build(), BodyHandlers.ofString());
        } catch (IOException | InterruptedException failed) {
            throw new IllegalStateException(failed);
        }
    }

    /** The form of the sign-in page, with whatever other cookies. */
    private HttpRequest.Builder signIn(String cookies) {
        ApiClient page = new ApiClient(port);
        page.get("/login");
        return to("/login").header("Cookie", "XSRF-TOKEN=" + page.token() + cookies)
                .header("X-XSRF-TOKEN", page.token()).header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString("username=" + grown.in("t").replace("@", "%40") + "&password="
                        + PASSWORD.replace(" ", "+")));
    }

    /** A page of another site makes the browser send the cookies along, but cannot read the token in them. */
    @Test
    void nothingIsChangedWithoutThePagesToken() {
        ApiClient teacher = teacher();
        List<String> routes = new ArrayList<>(RightsTest.routes(context, servlets).stream()
                .filter(r -> r.startsWith("POST ") || r.startsWith("DELETE ")).toList());
        routes.addAll(List.of("POST /login", "POST /logout"));
        assertThat(routes).contains("POST /api/observations", "DELETE /api/table/passes/{pass}", "POST /login/password")
                .hasSizeGreaterThan(8);
        for (String route : routes) {
            String[] parts = route.split(" ");
            HttpRequest.Builder forged = to(parts[1].replaceAll("\\{[^}]+}", UUID.randomUUID().toString()))
                    .header("Cookie", teacher.cookies()).header("Origin", "https://elsewhere.example");
            assertThat(answer(forged.copy().header("Content-Type", "text/plain").method(parts[0],
                    BodyPublishers.ofString("[]"))).statusCode()).as(route).isEqualTo(403);
            assertThat(answer(forged.copy().header("Content-Type", "application/x-www-form-urlencoded")
                    .header("X-XSRF-TOKEN", UUID.randomUUID().toString()).method(parts[0],
                    BodyPublishers.ofString("username=x&password=x&_csrf=x"))).statusCode()).as(route).isEqualTo(403);
        }
        assertThat(teacher.get("/api/children").statusCode()).as("still signed in").isEqualTo(200);
    }

    @Test
    void aSessionIdKnownBeforeSignInIsWorthNothingAfterItAndNoneOutlivesSignOut() {
        SignedIn adult = grown.as("t");
        accounts.setPassword(adult.districtId(), adult.adultId(), PASSWORD);
        TestAdult.signOut();
        HttpResponse<String> in = answer(signIn("; JSESSIONID=" + PLANTED));
        assertThat(in.headers().firstValue("location").orElse("")).doesNotContain("error");
        String session = in.headers().allValues("set-cookie").stream().filter(c -> c.startsWith("JSESSIONID="))
                .findFirst().orElseThrow();
        assertThat(session).contains("HttpOnly", "SameSite=Lax").doesNotContain(PLANTED);
        String id = session.substring(0, session.indexOf(';'));
        assertThat(answer(to("/api/children").header("Cookie", id)).statusCode()).isEqualTo(200);
        assertThat(answer(to("/api/children").header("Cookie", "JSESSIONID=" + PLANTED)).statusCode()).isEqualTo(401);
        assertThat(answer(to("/api/children;jsessionid=" + id.substring(11))).statusCode()).as("in the address")
                .isIn(400, 401);
        ApiClient teacher = teacher();
        String cookies = teacher.cookies();
        teacher.form("/logout", Map.of());
        assertThat(answer(to("/api/children").header("Cookie", cookies)).statusCode()).isEqualTo(401);
    }

    /** Fields of the store that no program may fill: whose, by whom, when taken in, in which class. */
    @Test
    void fieldsBesideThoseOfALookChangeNothing() {
        ApiClient teacher = teacher();
        UUID look = UUID.randomUUID();
        String body = ("[{\"id\":\"%s\",\"observed_at\":\"%s\",\"child\":\"%s\",\"skill\":\"T05\",\"task\":\"17\",\"step\":3,"
                + "\"help\":\"none\",\"kind\":\"table\",\"tags\":[],\"district_id\":1,\"child_id\":\"%s\",\"class_id\":\"%s\","
                + "\"recorded_by\":\"%s\",\"observer\":\"%s\",\"recorded_at\":\"2001-01-01T00:00:00Z\","
                + "\"waiting_since\":\"2001-01-01T00:00:00Z\"}]").formatted(look, OffsetDateTime.now(clock).minusMinutes(1),
                shared.schoolKey(), otherRoom.id("childId"), otherRoom.id("classId"), UUID.randomUUID(), grown.in("l"));
        HttpResponse<String> answer = teacher.post("/api/observations", body);
        assertThat(answer.body()).contains("stored");
        SignedIn adult = grown.as("t");
        transaction.executeWithoutResult(status -> jdbc.sql("select * from observation where observation_id = :id")
                .param("id", look).query(row -> {
                    assertThat(row.getInt("district_id")).isEqualTo(adult.districtId());
                    assertThat(row.getObject("child_id")).isEqualTo(shared.id("childId"));
                    assertThat(row.getObject("class_id")).isEqualTo(shared.id("classId"));
                    assertThat(row.getObject("recorded_by")).isEqualTo(adult.adultId());
                    assertThat(row.getString("observer")).isEqualTo(grown.in("t"));
                    assertThat(row.getTimestamp("recorded_at")).isAfter("2020-01-01");
                    assertThat(row.getTimestamp("waiting_since")).isNull();
                }));
    }

    @Test
    void aFilterIsAValueAndNeverAPartOfTheQuestion() {
        ApiClient teacher = teacher();
        String all = teacher.get("/api/observations?child=" + shared.schoolKey()).body();
        assertThat(all).contains("T05");
        for (String tried : List.of("'%20or%20'1'='1", "T05'--", "%25", "T0_", "\\';select%20pg_sleep(9)--")) {
            HttpResponse<String> answer = teacher.get("/api/observations?child=" + shared.schoolKey() + "&skill="
                    + tried.replace("'", "%27").replace("\\", "%5C").replace(";", "%3B"));
            assertThat(answer.statusCode()).as(tried).isLessThan(500);
            assertThat(answer.body()).as(tried).doesNotContain("T05\"");
        }
    }

    /** PostgreSQL keeps no text with the character zero in it. */
    @Test
    void theCharacterZeroIsRefusedAndBreaksNothing() {
        ApiClient teacher = teacher();
        for (String query : List.of("child=%00", "child=" + shared.schoolKey() + "&skill=a%00b")) {
            assertThat(teacher.get("/api/observations?" + query).statusCode()).as(query).isEqualTo(400);
        }
        assertThat(teacher.form("/login/password", Map.of("password", "a\u0000", "chosen", "b")).statusCode())
                .isEqualTo(400);
        for (String field : List.of("child", "skill", "task", "note", "id", "help")) {
            String look = "{\"id\":\"%s\",\"observed_at\":\"%s\",\"child\":\"%s\",\"skill\":\"T05\",\"task\":\"17\",\"step\":3,"
                    .formatted(UUID.randomUUID(), OffsetDateTime.now(clock).minusMinutes(1), shared.schoolKey())
                    + "\"help\":\"none\",\"kind\":\"table\",\"tags\":[],\"note\":\"n\"}";
            HttpResponse<String> answer = teacher.post("/api/observations", "["
                    + look.replaceFirst("\"" + field + "\":\"[^\"]*\"", "\"" + field + "\":\"a\\\\u0000b\"") + "]");
            assertThat(answer.statusCode()).as(field + " " + answer.body()).isEqualTo(200);
            assertThat(answer.body()).as(field).contains("refused");
        }
    }

    /** Guesses at one address lock nobody out elsewhere: ten at once, as {@link SignInAttempts} says. */
    @Test
    void guessesAreLimitedByNameAndAddress() {
        SignInAttempts attempts = new SignInAttempts();
        for (int i = 0; i < 10; i++) {
            assertThat(attempts.allow("teacher", "10.0.0.1")).isTrue();
        }
        assertThat(attempts.allow("teacher", "10.0.0.1")).isFalse();
        assertThat(attempts.allow("teacher", "10.0.0.2")).as("the teacher, elsewhere").isTrue();
        assertThat(attempts.allow("aide", "10.0.0.1")).as("a colleague behind the same address").isTrue();
    }

    /** The tests stand where a proxy stands, on 127.0.0.1; 203.0.113.0/24 and 198.51.100.0/24 are for examples: RFC 5737. */
    @Test
    void theProxyIsBelievedWhenItSaysForWhomItSpeaks() {
        SignedIn adult = grown.as("t");
        accounts.setPassword(adult.districtId(), adult.adultId(), PASSWORD);
        HttpResponse<String> in = answer(signIn("").header("X-Forwarded-For", "198.51.100.1, 203.0.113.9")
                .header("X-Forwarded-Proto", "https"));
        assertThat(in.headers().allValues("set-cookie")).anySatisfy(cookie -> assertThat(cookie).startsWith("JSESSIONID=")
                .contains("Secure", "HttpOnly"));
        assertThat(in.headers().firstValue("strict-transport-security").orElse("")).contains("max-age=31536000",
                "includeSubDomains");
        grown.as("t");
        assertThat(sessions.events().getFirst().address()).as("the last one named, which the proxy wrote")
                .isEqualTo("203.0.113.9");
    }

    @Test
    void aWrongPasswordAndAnUnknownNameAreAnsweredAlike() {
        teacher();
        HttpResponse<String> wrong = new ApiClient(port).signIn(grown.in("t"), "not the password of it");
        HttpResponse<String> unknown = new ApiClient(port).signIn("nobody@" + grown.school(), "not the password of it");
        assertThat(wrong.statusCode()).isEqualTo(unknown.statusCode());
        assertThat(wrong.headers().firstValue("location").orElseThrow().replaceAll(";jsessionid=[^?]*", ""))
                .isEqualTo(unknown.headers().firstValue("location").orElseThrow().replaceAll(";jsessionid=[^?]*", ""))
                .endsWith("/login?error");
        assertThat(wrong.body()).isEqualTo(unknown.body());
    }

    @Test
    void whatIsTooLargeIsRefusedAndAnsweredAndTheNextOneServed() {
        ApiClient teacher = teacher();
        String large = "[\"" + "a".repeat(5 * 1024 * 1024) + "\"]";
        assertThat(teacher.post("/api/observations", large).statusCode()).isEqualTo(413);
        assertThat(teacher.get("/api/observations?child=" + "a".repeat(40_000)).statusCode()).isIn(400, 414);
        assertThat(answer(to("/login").header("X-Long", "a".repeat(40_000))).statusCode()).isIn(400, 431);
        assertThat(teacher.form("/login", Map.of("username", "a".repeat(3 * 1024 * 1024))).statusCode())
                .isIn(302, 400, 401, 413);
        assertThat(teacher.get("/login").statusCode()).isEqualTo(200);
    }

    /** More than there are threads for requests (200). A body that never comes is another matter: see ASVS.md. */
    @Test
    void headersThatNeverEndKeepNobodyWaiting() throws IOException {
        List<Socket> slow = new ArrayList<>();
        try {
            for (int i = 0; i < 250; i++) {
                Socket socket = new Socket("localhost", port);
                slow.add(socket);
                socket.getOutputStream().write("GET /login HTTP/1.1\r\nHost: localhost\r\nX-".getBytes(
                        StandardCharsets.US_ASCII));
                socket.getOutputStream().flush();
            }
            assertThat(new ApiClient(port).get("/login").statusCode()).isEqualTo(200);
        } finally {
            for (Socket socket : slow) {
                socket.close();
            }
        }
    }

    /** Looser for the screens, whose engine needs inline code until its strict mode is a release. */
    @Test
    void everyDoorSendsItsPolicies() {
        for (String path : List.of("/login", "/table/", "/api/children", "/sign-in/password.html", "/")) {
            HttpResponse<String> answer = answer(to(path));
            String policy = answer.headers().firstValue("content-security-policy").orElse("none at " + path);
            assertThat(policy).as(path).contains("object-src 'none'", "frame-ancestors 'none'", "form-action 'self'");
            if (!path.equals("/")) {
                assertThat(policy).as(path).startsWith("default-src 'none'; script-src 'self'; style-src 'self';")
                        .contains("base-uri 'none'").doesNotContain("unsafe");
            }
            assertThat(answer.headers().firstValue("x-content-type-options")).as(path).contains("nosniff");
        }
    }

    @Test
    void aMethodIsTheOneSentAndTraceIsNone() {
        ApiClient teacher = teacher();
        HttpResponse<String> kept = answer(to("/api/table/passes").header("Cookie", teacher.cookies())
                .header("X-HTTP-Method-Override", "DELETE"));
        assertThat(kept.statusCode()).isEqualTo(200);
        assertThat(answer(to("/api/children").header("Cookie", teacher.cookies()).method("TRACE",
                BodyPublishers.noBody())).statusCode()).isGreaterThanOrEqualTo(400);
    }

    /** Whatever adults write is put onto screens as text; PDFs are held by the tests of each sheet. */
    @Test
    void noScreenOrScriptMakesMarkupOfText() throws IOException {
        List<String> found = new ArrayList<>();
        List<Path> files = new ArrayList<>();
        for (String root : List.of("src/main/java", "src/main/resources/META-INF/resources")) {
            try (Stream<Path> all = Files.walk(Path.of(root))) {
                files.addAll(all.filter(f -> f.toString().matches(".*\\.(java|js|html)")).toList());
            }
        }
        assertThat(files).hasSizeGreaterThan(300);
        for (Path file : files) {
            String text = Files.readString(file);
            if (MARKUP_OF_TEXT.matcher(text).find()
                    || !file.toString().endsWith(".java") && SCRIPT_OF_TEXT.matcher(text).find()) {
                found.add(file.toString());
            }
        }
        assertThat(found).isEmpty();
        assertThat(MARKUP_OF_TEXT.matcher("here.innerHTML = name").find()).as("a planted one is found").isTrue();
    }
}
