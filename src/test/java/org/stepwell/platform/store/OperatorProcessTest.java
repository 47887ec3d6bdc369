package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpClient;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OperatorProcessTest {
    @TempDir
    Path folder;

    private static Map<String, String> privileged(EmbeddedServer server, StoreHome own) {
        return Map.of("STEPWELL_DB_URL", server.url(), "STEPWELL_DB_USER", "postgres", "STEPWELL_DB_PASSWORD_FILE",
                own.folder().resolve("secret-superuser").toString());
    }

    @Test
    void runsOnAnOwnPostgresqlWithOnePrivilegedUser() throws Exception {
        StoreHome own = new StoreHome(folder.resolve("own"));
        try (EmbeddedServer server = new EmbeddedServer(own)) {
            server.start();
            Path home = folder.resolve("home");
            for (int start = 0; start < 2; start++) {
                try (StepwellProcess stepwell = StepwellProcess.serving(home, privileged(server, own))) {
                    assertThat(stepwell.status(HttpClient.newHttpClient(), "/actuator/health/readiness"))
                            .isEqualTo(200);
                }
            }
            assertThat(home.resolve("secret-app-stepwell")).exists();
            assertThat(home.resolve("data")).doesNotExist();
        }
    }

    @Test
    void refusesAServerThatDoesNotWaitForTheDisk() throws Exception {
        StoreHome own = new StoreHome(folder.resolve("own"));
        PostgresPrograms programs;
        try (EmbeddedServer server = new EmbeddedServer(own)) {
            server.start();
            programs = new PostgresPrograms(PostgresBinaries.unpackedBelow(own.folder()), own.folder());
        }
        String data = own.folder().resolve("data").toString();
        String port = own.read("port").orElseThrow();
        programs.run(Duration.ofMinutes(1), "pg_ctl", "start", "-D", data, "-w", "-s", "-l",
                own.folder().resolve("postgres.log").toString(), "-o",
                "-c port=" + port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c fsync=off");
        try {
            StepwellProcess refused = StepwellProcess.launch(folder.resolve("home"), Map.of("STEPWELL_DB_URL",
                    EmbeddedServer.url(Integer.parseInt(port)), "STEPWELL_DB_USER", "postgres",
                    "STEPWELL_DB_PASSWORD", own.secret("superuser")));
            assertThat(refused.exit()).isEqualTo(1);
            assertThat(refused.errors()).contains("fsync is off", "fsync = on").doesNotContain("\tat ");
        } finally {
            programs.run(Duration.ofMinutes(1), "pg_ctl", "stop", "-D", data, "-m", "fast", "-w", "-s");
        }
    }
}
