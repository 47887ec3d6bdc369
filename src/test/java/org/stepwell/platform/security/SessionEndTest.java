package org.stepwell.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Clock;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.observation.ApiClient;
import org.stepwell.roster.Invitations;
import org.stepwell.roster.Invitations.Invitation;
import org.stepwell.roster.Invitations.Role;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class SessionEndTest {
    private static final String OWN = "seven quiet herons";
    private static final String OTHER = "eight loud magpies";

    @LocalServerPort
    private int port;
    @Autowired
    private DataSource dataSource;

    private Invitations terminal() {
        return new Invitations(dataSource, Clock.systemUTC());
    }

    private void adult(String name) {
        String oneTime = terminal().add(new Invitation(name, "Somebody", Role.AIDE, "Room for " + name, true, null,
                null));
        new ApiClient(port).form("/login/first", Map.of("username", name, "password", oneTime, "chosen", OWN));
    }

    private ApiClient signedIn(String name, String password) {
        ApiClient client = new ApiClient(port);
        client.signIn(name, password);
        assertThat(in(client)).isTrue();
        return client;
    }

    private static boolean in(ApiClient client) {
        return client.get("/api/children").statusCode() == 200;
    }

    private static HttpResponse<String> change(ApiClient client, String former, String chosen) {
        return client.form("/login/password", Map.of("password", former, "chosen", chosen));
    }

    @Test
    void aResetFromTheTerminalEndsOpenSessionsAtTheNextRequestOnScreensToo() {
        adult("rosa@test");
        ApiClient api = signedIn("rosa@test", OWN);
        ApiClient screens = signedIn("rosa@test", OWN);
        assertThat(screens.get("/").statusCode()).as("whatever it is without built screens").isNotEqualTo(302);
        terminal().reset("rosa@test");
        assertThat(api.get("/api/children").statusCode()).isEqualTo(401);
        assertThat(screens.get("/").statusCode()).isEqualTo(302);
        assertThat(screens.get("/").headers().firstValue("location").orElse("")).contains("/login");
    }

    @Test
    void anotherAdultsSessionGoesOn() {
        adult("sam@test");
        adult("tia@test");
        ApiClient other = signedIn("tia@test", OWN);
        terminal().reset("sam@test");
        assertThat(in(other)).isTrue();
    }

    @Test
    void aChangedPasswordKeepsThisSessionAndEndsTheOthers() {
        adult("uma@test");
        ApiClient here = signedIn("uma@test", OWN);
        ApiClient there = signedIn("uma@test", OWN);
        assertThat(change(here, OWN, OTHER).statusCode()).isEqualTo(204);
        assertThat(in(here)).isTrue();
        assertThat(in(there)).isFalse();
        ApiClient old = new ApiClient(port);
        old.signIn("uma@test", OWN);
        assertThat(in(old)).isFalse();
        signedIn("uma@test", OTHER);
    }

    @Test
    void aChangeNeedsTheFormerPasswordAndAGoodNewOne() {
        adult("vera@test");
        ApiClient here = signedIn("vera@test", OWN);
        assertThat(change(here, "not the former one", OTHER).statusCode()).isEqualTo(401);
        assertThat(change(here, "not the former one", OTHER).body()).contains("no_fit");
        assertThat(change(here, OWN, "password12345678").body()).contains("common");
        assertThat(change(here, OWN, "I am vera@test here").body()).contains("too_near");
        assertThat(change(here, OWN, OWN).body()).contains("too_near");
        assertThat(change(here, OWN, "with Quillwater School").body()).contains("too_near");
        assertThat(in(here)).isTrue();
        signedIn("vera@test", OWN);
    }

    @Test
    void whoIsNotSignedInChangesNothing() {
        HttpResponse<String> answer = change(new ApiClient(port), "a-password-of-the-tests", OTHER);
        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.body()).contains("signed_out");
    }

    @Test
    void theSamePasswordTypedOnAnotherKeyboardOpensTheDoor() {
        String oneTime = terminal().add(new Invitation("zoe@test", "Somebody", Role.AIDE, "Room for zoe", true, null,
                null));
        new ApiClient(port).form("/login/first", Map.of("username", "zoe@test", "password", oneTime, "chosen",
                "la ni\u00f1a y nueve garzas"));
        signedIn("zoe@test", "la nin\u0303a y nueve garzas");
    }
}
