package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.net.http.HttpClient;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LifeProcessTest {
    private static final String READY = "/actuator/health/readiness";
    private final HttpClient client = HttpClient.newHttpClient();

    @TempDir
    Path folder;
    private Path home;

    @BeforeEach
    void chooseHome() {
        home = folder.resolve("home");
    }

    @Test
    void aSecondStartOnTheSameHomeSaysWhoHoldsItAndStops() throws Exception {
        try (StepwellProcess first = StepwellProcess.serving(home, Map.of())) {
            StepwellProcess second = StepwellProcess.launch(home, Map.of());
            assertThat(second.exit()).isEqualTo(1);
            assertThat(second.errors()).contains("already running", "process " + first.process().pid(), "since ",
                    first.address()).doesNotContain("Exception");
            assertThat(first.status(client, READY)).isEqualTo(200);
        }
    }

    @Test
    void aTermSignalLeavesNoProcessAndNoPidFile() throws Exception {
        StepwellProcess server = StepwellProcess.serving(home, Map.of());
        assertThat(StepwellProcess.anyLeft(home)).isTrue();
        server.process().destroy();
        assertThat(server.exit()).as("128 + SIGTERM").isEqualTo(143);
        assertThat(home.resolve("data/postmaster.pid")).doesNotExist();
        assertThat(StepwellProcess.anyLeft(home)).isFalse();
        assertThat(server.errors()).doesNotContain("ERROR");
    }

    @Test
    void aStartAfterAHardKillRecoversByItself() throws Exception {
        StepwellProcess killed = StepwellProcess.serving(home, Map.of());
        ProcessHandle left = StepwellProcess.postgres(home);
        killed.process().destroyForcibly();
        killed.exit();
        assertThat(left.isAlive()).as("the database outlives the killed program").isTrue();
        try (StepwellProcess next = StepwellProcess.serving(home, Map.of())) {
            assertThat(next.status(client, READY)).isEqualTo(200);
            assertThat(StepwellProcess.postgres(home).pid()).isNotEqualTo(left.pid());
        }
    }

    @Test
    void aStartAfterTheWholeTreeWasKilledRecoversByItself() throws Exception {
        StepwellProcess killed = StepwellProcess.serving(home, Map.of());
        killed.killTree();
        killed.exit();
        assertThat(home.resolve("data/postmaster.pid")).as("nothing was stopped in order").exists();
        try (StepwellProcess next = StepwellProcess.serving(home, Map.of())) {
            assertThat(next.status(client, READY)).isEqualTo(200);
        }
    }

    @Test
    void aDeadDatabaseIsBroughtBack() throws Exception {
        try (StepwellProcess server = StepwellProcess.serving(home, Map.of())) {
            long before = StepwellProcess.postgres(home).pid();
            StepwellProcess.postgres(home).destroyForcibly();
            await().atMost(Duration.ofMinutes(1)).ignoreExceptions().until(
                    () -> StepwellProcess.postgres(home).pid() != before && server.status(client, READY) == 200
                            && server.errors().contains("PostgreSQL is back"));
            assertThat(server.errors()).contains("PostgreSQL has died");
        }
    }

    @Test
    void saysThatThePortIsTaken() throws Exception {
        try (StepwellProcess first = StepwellProcess.serving(home, Map.of())) {
            String port = first.address().substring(first.address().lastIndexOf(':') + 1);
            StepwellProcess second = StepwellProcess.launch(folder.resolve("other"), Map.of("STEPWELL_PORT", port));
            assertThat(second.exit()).isEqualTo(1);
            assertThat(second.errors()).contains("Port " + port + " is taken", "STEPWELL_PORT")
                    .doesNotContain("\tat ");
            assertThat(StepwellProcess.anyLeft(folder.resolve("other"))).isFalse();
        }
    }
}
