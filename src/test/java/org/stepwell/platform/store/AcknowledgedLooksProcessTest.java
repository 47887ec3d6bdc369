package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A look that the server acknowledged is there, once, after the whole tree was killed in the middle of a burst. */
class AcknowledgedLooksProcessTest {
    private static final int KILLS = 3;
    private static final int SENDERS = 4;
    private static final int BEFORE_THE_KILL = 40;
    private static final String PASSWORD = "four quiet pebbles by the well";
    private static final JsonMapper JSON = new JsonMapper();

    @TempDir
    Path folder;

    /** One browser: its cookies, and the token sent back with every post. */
    private static final class Browser {
        private final CookieManager cookies = new CookieManager();
        private final HttpClient client = HttpClient.newBuilder().cookieHandler(cookies).build();
        private final String address;

        Browser(String address) throws Exception {
            this.address = address;
            get("/login");
            String form = "username=" + URLEncoder.encode("teacher@sample", StandardCharsets.UTF_8) + "&password="
                    + URLEncoder.encode(PASSWORD, StandardCharsets.UTF_8);
            post("/login", "application/x-www-form-urlencoded", form);
        }

        HttpResponse<String> get(String path) throws IOException, InterruptedException {
            return client.send(HttpRequest.newBuilder(URI.create(address + path)).timeout(Duration.ofSeconds(30))
                    .build(), HttpResponse.BodyHandlers.ofString());
        }

        HttpResponse<String> post(String path, String type, String body) throws IOException, InterruptedException {
            String token = cookies.getCookieStore().getCookies().stream()
                    .filter(cookie -> cookie.getName().equals("XSRF-TOKEN")).findFirst().orElseThrow().getValue();
            return client.send(HttpRequest.newBuilder(URI.create(address + path)).timeout(Duration.ofSeconds(30))
                    .header("Content-Type", type).header("X-XSRF-TOKEN", token)
                    .POST(HttpRequest.BodyPublishers.ofString(body)).build(), HttpResponse.BodyHandlers.ofString());
        }

        JsonNode children() throws IOException, InterruptedException {
            HttpResponse<String> answer = get("/api/children");
            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
            return JSON.readTree(answer.body());
        }
    }

    private static Map<String, String> sample() {
        return Map.of("STEPWELL_SAMPLE", "on", "STEPWELL_SAMPLE_PASSWORD", PASSWORD);
    }

    private static void send(Browser browser, String child, Set<UUID> acknowledged, CountDownLatch enough) {
        while (true) {
            UUID id = UUID.randomUUID();
            String look = JSON.writeValueAsString(List.of(Map.of("id", id, "observed_at",
                    OffsetDateTime.now(ZoneOffset.UTC).toString(), "child", child, "skill", "T05", "task", "1", "step",
                    3, "help", "none", "kind", "table")));
            try {
                HttpResponse<String> answer = browser.post("/api/observations", "application/json", look);
                if (answer.statusCode() == 200
                        && JSON.readTree(answer.body()).get(0).get("status").asString().equals("stored")) {
                    acknowledged.add(id);
                    enough.countDown();
                }
            } catch (IOException killed) {
                return;
            } catch (InterruptedException stop) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    @Test
    void everyAcknowledgedLookIsThereOnceAfterThreeHardKills() throws Exception {
        Path home = folder.resolve("home");
        Set<UUID> acknowledged = ConcurrentHashMap.newKeySet();
        String child = "";
        for (int kill = 0; kill < KILLS; kill++) {
            StepwellProcess server = StepwellProcess.serving(home, sample());
            Browser browser = new Browser(server.address());
            String first = browser.children().get(0).get("child").asString();
            child = first;
            CountDownLatch enough = new CountDownLatch(BEFORE_THE_KILL);
            try (ExecutorService senders = Executors.newFixedThreadPool(SENDERS)) {
                for (int sender = 0; sender < SENDERS; sender++) {
                    senders.submit(() -> send(browser, first, acknowledged, enough));
                }
                boolean burst = enough.await(1, TimeUnit.MINUTES);
                server.killTree();
                server.exit();
                assertThat(burst).as("looks acknowledged: " + acknowledged.size()).isTrue();
            }
        }
        try (StepwellProcess server = StepwellProcess.serving(home, sample())) {
            Browser browser = new Browser(server.address());
            LocalDate today = LocalDate.now(ZoneOffset.UTC);
            HttpResponse<String> answer = browser.get("/api/observations?child="
                    + URLEncoder.encode(child, StandardCharsets.UTF_8) + "&from=" + today.minusDays(2) + "&to="
                    + today.plusDays(2));
            assertThat(answer.statusCode()).isEqualTo(200);
            Map<UUID, Integer> times = new HashMap<>();
            for (JsonNode look : JSON.readTree(answer.body())) {
                times.merge(UUID.fromString(look.get("id").asString()), 1, Integer::sum);
            }
            assertThat(new HashSet<>(times.values())).containsOnly(1);
            assertThat(times.keySet()).containsAll(acknowledged);
        }
    }
}
