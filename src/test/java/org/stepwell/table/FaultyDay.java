package org.stepwell.table;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Playwright;
import java.io.IOException;
import java.io.UncheckedIOException;

/** The server, the proxy before it and a browser: what every test and every campaign of faults stands on. */
final class FaultyDay implements AutoCloseable {
    static final String TEACHER = "teacher@sample";
    static final String CO_TEACHER = "coteacher@sample";

    private final TableServer server = start();
    private final StoredLooks store = new StoredLooks(server.home());
    private final ChaosProxy proxy;
    private final Playwright playwright = Tablet.playwright();
    private final Browser browser = Tablet.browser(playwright);

    FaultyDay() {
        try {
            proxy = new ChaosProxy(server.port());
        } catch (IOException noPort) {
            throw new UncheckedIOException(noPort);
        }
    }

    private static TableServer start() {
        try {
            return new TableServer();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    TableServer server() {
        return server;
    }

    StoredLooks store() {
        return store;
    }

    ChaosProxy proxy() {
        return proxy;
    }

    Playwright playwright() {
        return playwright;
    }

    Browser browser() {
        return browser;
    }

    /** A new server process on the same home, in the place of the one that was killed. */
    void startServerAgain() {
        server.startAgain();
        proxy.lead(server.port());
    }

    @Override
    public void close() {
        try {
            playwright.close();
            store.close();
            proxy.close();
        } catch (IOException alreadyClosed) {
            throw new UncheckedIOException(alreadyClosed);
        } finally {
            server.close();
        }
    }
}
