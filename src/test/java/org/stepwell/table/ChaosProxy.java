package org.stepwell.table;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Stands between the browser and the server and spoils exchanges on demand. Its address stays the same while servers
 * behind it come and go. One request a connection, so that a cut falls where it was meant to.
 */
final class ChaosProxy implements AutoCloseable {
    private static final String POSTS = "POST /api/";

    private final ServerSocket door;
    private final Map<String, UnaryOperator<String>> changes = new ConcurrentHashMap<>();
    private final AtomicInteger met = new AtomicInteger();
    private static final Pattern ID = Pattern.compile("\"id\":\"([0-9a-f-]{36})\"");

    private final Queue<String> posted = new ConcurrentLinkedQueue<>();
    private volatile int upstream;
    private volatile boolean gone;
    private volatile CountDownLatch letGo = new CountDownLatch(1);
    private @Nullable Fault fault;
    private String matching = POSTS;
    private int times;
    private boolean struck;

    ChaosProxy(int upstream) throws IOException {
        this.upstream = upstream;
        door = new ServerSocket(0, 200, InetAddress.getLoopbackAddress());
        Thread.ofVirtual().name("proxy").start(this::accept);
    }

    String address() {
        return "http://localhost:" + door.getLocalPort();
    }

    /** Sends what comes from now on to a server on another port. */
    void lead(int port) {
        upstream = port;
    }

    /** No network: every connection ends at once. */
    void goAway() {
        gone = true;
    }

    /** The next {@code count} posts meet the fault. */
    void meet(Fault next, int count) {
        meet(next, count, POSTS);
    }

    /** The next {@code count} requests whose first line begins with {@code start} meet the fault. */
    synchronized void meet(Fault next, int count, String start) {
        met.set(0);
        fault = next;
        times = count;
        struck = false;
        matching = start;
    }

    /** How many requests met the newest fault. */
    int met() {
        return met.get();
    }

    /** Ids of the looks in all posts, once for each time they were sent. */
    List<String> posted() {
        return List.copyOf(posted);
    }

    /** Ends every fault and lets go of what was held back. */
    synchronized void heal() {
        gone = false;
        fault = null;
        times = 0;
        letGo.countDown();
        letGo = new CountDownLatch(1);
    }

    /** From now on the text that the server gives for a path is changed on its way: another version of the page. */
    void change(String path, UnaryOperator<String> change) {
        changes.put(path, change);
    }

    void changeNothing() {
        changes.clear();
    }

    private synchronized @Nullable Fault faultFor(String firstLine) {
        if (fault == null || times == 0 || !firstLine.startsWith(matching)) {
            return null;
        }
        times--;
        return fault;
    }

    private void accept() {
        while (!door.isClosed()) {
            try {
                Socket client = door.accept();
                Thread.ofVirtual().start(() -> serve(client));
            } catch (IOException closed) {
                return;
            }
        }
    }

    private void serve(Socket client) {
        try (client) {
            HttpText request = HttpText.read(client.getInputStream());
            if (gone || request == null) {
                return;
            }
            if (request.firstLine().startsWith(POSTS)) {
                ID.matcher(new String(request.body(), StandardCharsets.UTF_8)).results()
                        .forEach(found -> posted.add(found.group(1)));
            }
            Fault meets = faultFor(request.firstLine());
            if (meets == null) {
                answer(client, exchange(plain(request)), request.path());
                return;
            }
            try {
                spoil(client, plain(request), meets);
            } finally {
                met.incrementAndGet();
            }
        } catch (IOException ended) {
            // One of the two has gone: what the other sees is a broken connection, and that is the point.
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private void spoil(Socket client, byte[] request, Fault meets) throws IOException, InterruptedException {
        switch (meets.kind()) {
            case CUT_BEFORE -> strike(meets);
            case CUT_DURING -> {
                try (Socket server = connect()) {
                    server.getOutputStream().write(request, 0, (int) (request.length * meets.at()));
                    server.getOutputStream().flush();
                    strike(meets);
                }
            }
            case LOST_AFTER_COMMIT -> {
                exchange(request);
                strike(meets);
            }
            case TRUNCATED -> {
                byte[] answer = exchange(request);
                client.getOutputStream().write(answer, 0, (int) (answer.length * meets.at()));
            }
            case HANG -> {
                met.incrementAndGet();
                letGo.await(2, TimeUnit.MINUTES);
            }
            case LATE -> {
                byte[] answer = exchange(request);
                met.incrementAndGet();
                letGo.await(2, TimeUnit.MINUTES);
                answer(client, answer, "");
            }
            case PORTAL -> client.getOutputStream().write(("HTTP/1.1 200 OK\r\nContent-Type: text/html\r\n"
                    + "Connection: close\r\n\r\n<h1>Accept the terms of this network</h1>")
                    .getBytes(StandardCharsets.ISO_8859_1));
            default -> client.getOutputStream().write(("HTTP/1.1 " + meets.kind().status()
                    + " Fault\r\nContent-Type: application/json\r\nContent-Length: 2\r\nConnection: close\r\n\r\n{}")
                    .getBytes(StandardCharsets.ISO_8859_1));
        }
    }

    /** The worst moment comes once, however many requests meet the fault. */
    private void strike(Fault meets) {
        synchronized (this) {
            if (struck) {
                return;
            }
            struck = true;
        }
        meets.strike().run();
    }

    private Socket connect() throws IOException {
        return new Socket(InetAddress.getLoopbackAddress(), upstream);
    }

    private byte[] exchange(byte[] request) throws IOException {
        try (Socket server = connect()) {
            OutputStream out = server.getOutputStream();
            out.write(request);
            out.flush();
            InputStream in = server.getInputStream();
            ByteArrayOutputStream answer = new ByteArrayOutputStream();
            in.transferTo(answer);
            if (answer.size() == 0) {
                throw new IOException("the server ended without an answer");
            }
            return answer.toByteArray();
        }
    }

    /** The request as the server gets it: one a connection, and whole where a change has to be made. */
    private byte[] plain(HttpText request) {
        HttpText once = request.without("Connection").with("Connection", "close");
        return (changes.containsKey(request.path())
                ? once.without("Accept-Encoding").without("If-None-Match").without("If-Modified-Since") : once).bytes();
    }

    private void answer(Socket client, byte[] answer, String path) throws IOException {
        UnaryOperator<String> change = changes.get(path);
        client.getOutputStream().write(change == null ? answer : HttpText.of(answer).changed(change).bytes());
        client.getOutputStream().flush();
    }

    @Override
    public void close() throws IOException {
        heal();
        door.close();
    }
}
