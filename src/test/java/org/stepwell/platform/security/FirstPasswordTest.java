package org.stepwell.platform.security;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
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
class FirstPasswordTest {
    private static final String OWN = "seven quiet herons";

    @LocalServerPort
    private int port;
    @Autowired
    private DataSource dataSource;
    @Autowired
    private AccountService accounts;

    private String invited(String signIn, Clock clock) {
        return new Invitations(dataSource, clock).add(
                new Invitation(signIn, "Somebody", Role.AIDE, "Room for " + signIn, true, null, null));
    }

    private static boolean in(ApiClient client) {
        return client.get("/api/children").statusCode() == 200;
    }

    @Test
    void aOneTimePasswordOpensNothingButTheChoiceOfAnOwnOne() {
        String oneTime = invited("ines@test", Clock.systemUTC());
        ApiClient client = new ApiClient(port);
        assertThat(client.signIn("ines@test", oneTime).headers().firstValue("location").orElse(""))
                .endsWith("/login?first");
        assertThat(in(client)).isFalse();
        assertThat(choose(client, "ines@test", oneTime, OWN)).isEqualTo(204);
        assertThat(in(client)).isFalse();
        client.signIn("Ines@Test", OWN);
        assertThat(in(client)).isTrue();
        assertThat(choose(client, "ines@test", oneTime, "another long choice")).isEqualTo(401);
    }

    @Test
    void refusesAChoiceThatIsTooShortTooLongOrTooNearAndKeepsTheOneTimePasswordGood() {
        String oneTime = invited("tomas@test", Clock.systemUTC());
        ApiClient client = new ApiClient(port);
        assertThat(client.form("/login/first", Map.of("username", "tomas@test", "password", oneTime, "chosen", "short"))
                .body()).contains("too_short");
        assertThat(client.form("/login/first", Map.of("username", "tomas@test", "password", oneTime, "chosen",
                "x".repeat(129))).body()).contains("too_long");
        assertThat(client.form("/login/first", Map.of("username", "tomas@test", "password", oneTime, "chosen", oneTime))
                .body()).contains("too_near");
        assertThat(client.form("/login/first", Map.of("username", "tomas@test", "password", oneTime, "chosen",
                "my Tomas@test 1")).body()).contains("too_near");
        assertThat(choose(client, "tomas@test", oneTime, OWN)).isEqualTo(204);
    }

    @Test
    void neitherAPasswordOfLastWeekNorAnOwnOneNorAGuessCanBeChangedHere() {
        Clock before = Clock.fixed(Instant.now(Clock.systemUTC()).minus(Duration.ofDays(8)), ZoneOffset.UTC);
        String old = invited("late@test", before);
        ApiClient client = new ApiClient(port);
        assertThat(choose(client, "late@test", old, OWN)).isEqualTo(401);
        assertThat(client.signIn("late@test", old).headers().firstValue("location").orElse("")).endsWith("?error");
        assertThat(choose(client, "coteacher@sample", "a-password-of-the-tests", OWN)).isEqualTo(401);
        assertThat(choose(client, "nobody@test", "guess", OWN)).isEqualTo(401);
        for (int guess = 0; guess < 10; guess++) {
            choose(client, "late@test", "guess " + guess, OWN);
        }
        assertThat(choose(client, "late@test", old, OWN)).isEqualTo(429);
    }

    @Test
    void aResetEndsTheFormerPassword() {
        String oneTime = invited("reset@test", Clock.systemUTC());
        ApiClient client = new ApiClient(port);
        choose(client, "reset@test", oneTime, OWN);
        String again = accounts.reset("RESET@test").orElseThrow();
        client.signIn("reset@test", OWN);
        assertThat(in(client)).isFalse();
        assertThat(choose(client, "reset@test", again, OWN)).isEqualTo(204);
        client.signIn("reset@test", OWN);
        assertThat(in(client)).isTrue();
        assertThat(accounts.reset("nobody@test")).isEmpty();
    }

    private static int choose(ApiClient client, String name, String oneTime, String chosen) {
        return client.form("/login/first", Map.of("username", name, "password", oneTime, "chosen", chosen))
                .statusCode();
    }
}
