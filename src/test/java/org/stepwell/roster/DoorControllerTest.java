package org.stepwell.roster;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.test.annotation.DirtiesContext;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.security.SignInAttempts;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE=off", "spring.application.name=doors"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext
class DoorControllerTest {
    private static final Map<String, String> WISH = Map.of("school", "Alder Hill", "zone", "America/Chicago", "room",
            "Room 1", "name", "Ana Ruiz", "username", "ana@hill", "chosen", "seven quiet herons");

    @LocalServerPort
    private int port;
    @Autowired
    private SetUpCode code;
    @Autowired
    private SignInAttempts attempts;

    @AfterEach
    void forgetsTheTries() {
        for (String address : List.of("127.0.0.1", "0:0:0:0:0:0:0:1")) {
            attempts.forget("set-up code", address);
            attempts.forget("invitation code", address);
        }
    }

    private static Map<String, String> wish(String typed, String... other) {
        Map<String, String> wish = new HashMap<>(WISH);
        wish.put("code", typed);
        for (int i = 0; i < other.length; i += 2) {
            wish.put(other[i], other[i + 1]);
        }
        return wish;
    }

    @Test
    void answersEveryKindOfWrongInputClearlyAndThenMakesTheSchoolOnce() throws Exception {
        ApiClient client = new ApiClient(port);
        assertThat(client.get("/login/set-up").body()).isEqualTo("{\"open\":true}");
        assertThat(client.form("/login/set-up", wish("")).statusCode()).isEqualTo(401);
        assertThat(client.form("/login/set-up", wish("wrong")).statusCode()).isEqualTo(401);
        assertThat(client.form("/login/set-up", Map.of("code", "x")).statusCode()).as("fields missing").isEqualTo(400);
        String good = code.now().orElseThrow();
        HttpResponse<String> blank = client.form("/login/set-up", wish(good, "school", " "));
        assertThat(blank.statusCode()).isEqualTo(400);
        assertThat(blank.body()).contains("\"field\":\"school\"", "\"reason\":\"blank\"");
        assertThat(client.form("/login/set-up", wish(good, "chosen", "x".repeat(500_000))).body())
                .contains("too_long");
        assertThat(client.form("/login/set-up", wish(good, "name", "n".repeat(3_000_000))).statusCode())
                .as("larger than a form may be").isIn(400, 413);
        HttpResponse<String> forged = HttpClient.newHttpClient().send(HttpRequest.newBuilder(
                URI.create("http://localhost:" + port + "/login/set-up"))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString("code=" + good)).build(), BodyHandlers.ofString());
        assertThat(forged.statusCode()).as("without the page's token").isEqualTo(403);
        assertThat(client.get("/login/set-up").body()).isEqualTo("{\"open\":true}");

        assertThat(client.form("/login/set-up", wish(good)).statusCode()).isEqualTo(204);
        assertThat(client.form("/login/set-up", wish(good)).statusCode()).isEqualTo(409);
        assertThat(client.get("/login/set-up").body()).isEqualTo("{\"open\":false}");
        client.signIn("ana@hill", "seven quiet herons");
        assertThat(client.get("/api/children").body()).isEqualTo("[]");

        for (int guess = 0; guess < 10; guess++) {
            client.form("/login/invited", Map.of("code", "2-guess-" + guess, "name", "N", "username", "n@n", "chosen",
                    "seven quiet herons"));
        }
        HttpResponse<String> slow = client.form("/login/invited", Map.of("code", "2-guess", "name", "N", "username",
                "n@n", "chosen", "seven quiet herons"));
        assertThat(slow.statusCode()).isEqualTo(429);
        assertThat(slow.headers().firstValue("retry-after")).contains("60");
    }

    @Test
    void guessesAtTheSetUpCodeAreSlowedDown() {
        ApiClient client = new ApiClient(port);
        for (int guess = 0; guess < 10; guess++) {
            assertThat(client.form("/login/set-up", wish("guess " + guess)).statusCode()).isIn(401, 409);
        }
        assertThat(client.form("/login/set-up", wish("guess")).statusCode()).isEqualTo(429);
    }
}
