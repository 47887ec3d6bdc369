package org.stepwell.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestAdult;
import org.stepwell.TestDatabase;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.security.SignInEvent.What;
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
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    @Autowired
    private AccountService accounts;
    @Autowired
    private OpenSessions sessions;
    @Autowired
    private SessionService service;

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

    private List<OpenSession> open(String name) {
        try {
            return sessions.of(TestAdult.signIn(jdbc, transaction, name).adultId());
        } finally {
            TestAdult.signOut();
        }
    }

    private List<SignInEvent.What> events(String name) {
        TestAdult.signIn(jdbc, transaction, name);
        try {
            return service.events().stream().map(SignInEvent::what).toList();
        } finally {
            TestAdult.signOut();
        }
    }

    @Test
    void eachSessionIsListedAndEndedByItsAdultAlone() {
        adult("wim@test");
        adult("xan@test");
        ApiClient first = signedIn("wim@test", OWN);
        OpenSession there = open("wim@test").getFirst();
        ApiClient second = signedIn("wim@test", OWN);
        ApiClient other = signedIn("xan@test", OWN);
        assertThat(open("wim@test")).hasSize(2).allSatisfy(session -> {
            assertThat(session.address()).isIn("127.0.0.1", "0:0:0:0:0:0:0:1");
            assertThat(session.lastUsed()).isAfterOrEqualTo(session.since());
        });
        TestAdult.signIn(jdbc, transaction, "xan@test");
        assertThat(service.end(there.id())).as("not one's own").isFalse();
        assertThat(in(first)).isTrue();
        TestAdult.signIn(jdbc, transaction, "wim@test");
        assertThat(service.end(there.id())).isTrue();
        assertThat(service.end(there.id())).as("twice").isFalse();
        TestAdult.signOut();
        assertThat(in(first)).isFalse();
        assertThat(in(second)).isTrue();
        ApiClient third = signedIn("wim@test", OWN);
        OpenSession kept = open("wim@test").getFirst();
        TestAdult.signIn(jdbc, transaction, "wim@test");
        assertThat(service.endOthers(kept.id())).isEqualTo(1);
        TestAdult.signOut();
        assertThat(in(second)).isFalse();
        assertThat(in(third)).isTrue();
        assertThat(in(other)).isTrue();
        third.form("/logout", Map.of());
        assertThat(open("wim@test")).isEmpty();
        assertThat(events("wim@test")).containsExactly(What.SIGNED_OUT, What.OTHERS_ENDED, What.SIGNED_IN,
                What.SESSION_ENDED, What.SIGNED_IN, What.SIGNED_IN);
    }

    @Test
    void aWrongPasswordIsToldToWhomeverItWasTriedOn() {
        adult("yara@test");
        new ApiClient(port).signIn("yara@test", "not hers at all");
        Awaitility.await().until(() -> events("yara@test").equals(List.of(What.REFUSED)));
        ApiClient here = signedIn("yara@test", OWN);
        ApiClient there = signedIn("yara@test", OWN);
        change(here, OWN, OTHER);
        assertThat(open("yara@test")).hasSize(1);
        TestAdult.signIn(jdbc, transaction, "yara@test");
        assertThat(service.mine()).as("goes on with the new password").hasSize(1);
        TestAdult.signOut();
        assertThat(in(there)).isFalse();
        assertThat(events("yara@test")).startsWith(What.PASSWORD_SET, What.SIGNED_IN);
    }

    /** No proxy is named in the settings here, so anybody could have written the header. 203.0.113.0/24: RFC 5737. */
    @Test
    void nobodyIsBelievedToSpeakForAnotherAddress() {
        adult("abel@test");
        new ApiClient(port).with("X-Forwarded-For", "203.0.113.9").signIn("abel@test", OWN);
        assertThat(open("abel@test").getFirst().address()).isIn("127.0.0.1", "0:0:0:0:0:0:0:1");
    }

    /** Twelve hours: common practice, no source. */
    @Test
    void aSessionEndsWithItsDayHoweverMuchItIsUsed() throws Exception {
        adult("zita@test");
        assertThat(goesOn("zita@test", Duration.ofHours(11))).isTrue();
        assertThat(goesOn("zita@test", Duration.ofHours(12))).isFalse();
    }

    private boolean goesOn(String name, Duration age) throws Exception {
        Standing standing = accounts.check(name, OWN).orElseThrow().standing();
        SignedIn adult = TestAdult.signIn(jdbc, transaction, name);
        MockHttpServletRequest request = new MockHttpServletRequest("GET", "/api/children");
        OpenSession open = new OpenSession(sessions, adult.adultId(), standing, "127.0.0.1", "", sessions.now().minus(age));
        open.used(sessions.now());
        request.getSession().setAttribute(OpenSession.KEY, open);
        SecurityContextHolder.getContext().setAuthentication(PasswordSignIn.session(adult, standing));
        new SessionCheck(accounts, sessions).doFilter(request, new MockHttpServletResponse(), new MockFilterChain());
        boolean in = SecurityContextHolder.getContext().getAuthentication() != null;
        assertThat(request.getSession(false) != null).isEqualTo(in);
        TestAdult.signOut();
        return in;
    }

    /** Headers as three browsers send them, and one that tries to bring words of its own onto the screen. */
    @Test
    void aDeviceIsTheKindOfBrowserAndSystemAndNothingElseOfTheHeader() {
        assertThat(Device.named("Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0"))
                .isEqualTo("Firefox, Linux");
        assertThat(Device.named("Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko)"
                + " Chrome/140.0.0.0 Safari/537.36 Edg/140.0.0.0")).isEqualTo("Edge, Windows");
        assertThat(Device.named("Mozilla/5.0 (iPad; CPU OS 17_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko)"
                + " Version/17.0 Mobile/15E148 Safari/604.1")).isEqualTo("Safari, iPad");
        assertThat(Device.named("<script>Firefox</script>")).isEmpty();
        assertThat(Device.named(null)).isEmpty();
    }
}
