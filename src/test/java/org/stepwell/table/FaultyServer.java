package org.stepwell.table;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Serves the page's own files as they are and keeps looks as the real server must: once per id, and only then
 * answered. Faults can be switched on in front of or behind the keeping.
 */
final class FaultyServer implements AutoCloseable {
    private static final Path FILES = Path.of("src/main/resources/META-INF/resources");
    static final String STRICT_POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
            + "connect-src 'self'; worker-src 'self'; manifest-src 'self'; object-src 'none'; base-uri 'none'; "
            + "form-action 'self'; frame-ancestors 'none'; require-trusted-types-for 'script'";

    /** What the next posts meet. */
    enum Fault {
        NONE,
        LOST_BEFORE_READING,
        LOST_AFTER_KEEPING,
        GATEWAY_PAGE,
        HANG,
        STATUS
    }

    private final JsonMapper json = new JsonMapper();
    private final HttpServer server;
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Map<String, JsonNode> kept = new LinkedHashMap<>();
    private final List<Integer> batchSizes = new ArrayList<>();
    private final List<String> keptBy = new ArrayList<>();
    private Fault fault = Fault.NONE;
    private int status = 200;
    private int largestBatch = 500;
    private volatile String adult = "teacher@test";
    private volatile String refusedChild = "";
    private volatile long clockAheadMs;
    private volatile String pageAddition = "";
    private volatile boolean signedOut;
    private volatile boolean classGone;
    private final Map<String, String> passes = new java.util.concurrent.ConcurrentHashMap<>();
    private final Seals seals = new Seals();

    FaultyServer() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setExecutor(Executors.newVirtualThreadPerTaskExecutor());
        server.createContext("/", this::answer);
        server.start();
    }

    String address() {
        return "http://localhost:" + server.getAddress().getPort();
    }

    synchronized void meet(Fault next) {
        fault = next;
    }

    synchronized void meet(int httpStatus) {
        fault = Fault.STATUS;
        status = httpStatus;
    }

    synchronized void takeAtMost(int looks) {
        largestBatch = looks;
    }

    void signIn(String name) {
        adult = name;
    }

    void refuse(String child) {
        refusedChild = child;
    }

    void setClockAhead(long millis) {
        clockAheadMs = millis;
    }

    void changePage(String addition) {
        pageAddition = addition;
    }

    synchronized List<JsonNode> kept() {
        return List.copyOf(kept.values());
    }

    synchronized List<Integer> batchSizes() {
        return List.copyOf(batchSizes);
    }

    synchronized List<String> keptBy() {
        return List.copyOf(keptBy);
    }

    @Override
    public void close() {
        closing.countDown();
        server.stop(0);
    }

    private void answer(HttpExchange exchange) throws IOException {
        try (exchange) {
            String path = exchange.getRequestURI().getPath();
            switch (path) {
                case "/api/table" -> table(exchange);
                case "/api/observations" -> observations(exchange);
                case "/api/table/pass" -> pass(exchange);
                case "/logout" -> signOut(exchange);
                default -> file(exchange, path);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void file(HttpExchange exchange, String path) throws IOException {
        Path file = FILES.resolve("." + switch (path) {
            case "/table/" -> "/table/index.html";
            case "/login" -> "/sign-in/index.html";
            default -> path;
        }).normalize();
        if (!file.startsWith(FILES) || !Files.isRegularFile(file)) {
            send(exchange, 404, "text/plain", "not here");
            return;
        }
        String name = file.toString();
        String type = name.endsWith(".js") ? "text/javascript" : name.endsWith(".css") ? "text/css"
                : name.endsWith(".svg") ? "image/svg+xml" : name.endsWith(".html") ? "text/html;charset=utf-8"
                : "application/manifest+json";
        String body = Files.readString(file);
        if (path.equals("/table/")) {
            body = body.replace("</main>", pageAddition + "</main>");
        }
        exchange.getResponseHeaders().set("Content-Security-Policy", STRICT_POLICY);
        send(exchange, 200, type, body);
    }

    private void table(HttpExchange exchange) throws IOException {
        synchronized (this) {
            if (signedOut || fault == Fault.STATUS && status == 401) {
                send(exchange, 401, "application/json", "{\"error\":\"sign in\"}");
                return;
            }
        }
        if (classGone) {
            send(exchange, 404, "application/json", "{\"error\":\"not here\"}");
            return;
        }
        exchange.getResponseHeaders().add("Set-Cookie", "XSRF-TOKEN=" + tokenOf(adult) + "; Path=/");
        String time = java.time.Instant.ofEpochMilli(System.currentTimeMillis() + clockAheadMs).toString();
        send(exchange, 200, "application/json", TableFixture.table(adult, time));
    }

    private void pass(HttpExchange exchange) throws IOException {
        String device = json.readTree(exchange.getRequestBody().readAllBytes()).get("device").asString();
        String key = seals.keyOf(adult, device);
        String until = java.time.Instant.now().plus(java.time.Duration.ofDays(14)).toString();
        passes.put(passOf(adult), adult);
        send(exchange, 200, "application/json", json.writeValueAsString(Map.of("pass", passOf(adult), "passUntil",
                until, "key", key, "keyUntil", until, "keys", seals.keysOf(adult), "serverTime",
                java.time.Instant.ofEpochMilli(System.currentTimeMillis() + clockAheadMs).toString())));
    }

    private static String passOf(String name) {
        return "p" + name.hashCode();
    }

    private void signOut(HttpExchange exchange) throws IOException {
        signedOut = true;
        send(exchange, 200, "text/plain", "");
    }

    void signInAgain() {
        signedOut = false;
    }

    /** The class is no longer this adult's. */
    void takeClassAway() {
        classGone = true;
    }

    void endSession() {
        signedOut = true;
    }

    boolean hasSession() {
        return !signedOut;
    }

    void endPasses() {
        passes.clear();
    }

    private static String tokenOf(String name) {
        return "t-" + name.hashCode();
    }

    private void observations(HttpExchange exchange) throws IOException, InterruptedException {
        Fault now;
        int code;
        synchronized (this) {
            now = fault;
            code = status;
        }
        if (now == Fault.LOST_BEFORE_READING) {
            return;
        }
        byte[] body = exchange.getRequestBody().readAllBytes();
        switch (now) {
            case HANG -> closing.await();
            case GATEWAY_PAGE -> send(exchange, 200, "text/html", "<h1>Accept the terms of this network</h1>");
            case STATUS -> send(exchange, code, "application/json", "{\"error\":\"fault\"}");
            default -> keep(exchange, json.readTree(body), now);
        }
    }

    private void keep(HttpExchange exchange, JsonNode looks, Fault now) throws IOException {
        String pass = exchange.getRequestHeaders().getFirst("X-Stepwell-Pass");
        String csrf = exchange.getRequestHeaders().getFirst("X-XSRF-TOKEN");
        String maker = pass == null ? adult : passes.getOrDefault(pass, "");
        if (pass == null ? signedOut : maker.isEmpty()) {
            send(exchange, 401, "application/json", "{\"error\":\"sign in\"}");
            return;
        }
        if (pass == null && !tokenOf(adult).equals(csrf)) {
            send(exchange, 403, "application/json", "{\"error\":\"token\"}");
            return;
        }
        List<Map<String, String>> verdicts = new ArrayList<>();
        synchronized (this) {
            if (looks.size() > largestBatch) {
                send(exchange, 413, "application/json", "{\"error\":\"too many\"}");
                return;
            }
            batchSizes.add(looks.size());
            for (JsonNode item : looks) {
                JsonNode look = item.has("sealed") ? seals.open(maker, item) : item;
                String id = look.get("id").asString();
                JsonNode before = kept.get(id);
                String verdict = look.get("child").asString().equals(refusedChild)
                        || before != null && !before.equals(look) ? "refused" : before != null ? "duplicate" : "stored";
                if (verdict.equals("stored")) {
                    kept.put(id, look);
                    keptBy.add(maker);
                }
                verdicts.add(Map.of("id", id, "status", verdict, "reason",
                        verdict.equals("refused") ? "nobody of that id is in this class" : ""));
            }
        }
        if (now != Fault.LOST_AFTER_KEEPING) {
            send(exchange, 200, "application/json", json.writeValueAsString(verdicts));
        }
    }

    private static void send(HttpExchange exchange, int code, String type, String body) throws IOException {
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Content-Type", type);
        exchange.getResponseHeaders().set("Cache-Control", "no-cache");
        exchange.sendResponseHeaders(code, bytes.length);
        exchange.getResponseBody().write(bytes);
    }
}
