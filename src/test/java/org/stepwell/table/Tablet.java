package org.stepwell.table;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.TimeoutError;
import com.microsoft.playwright.options.FormData;
import com.microsoft.playwright.options.RequestOptions;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One browser on one tablet at the Table, with the hands of an adult. Everything it says about looks is heard. */
final class Tablet implements AutoCloseable {
    /** Phrases of one skill of the sample class by the step they show. */
    private static final Map<Integer, String> PHRASES = Map.of(1, "counted_all_from_one", 2, "began_at_ten",
            3, "made_ten_and_extras", 4, "said_ten_and_seven", 5, "wrote_10_plus_7");
    static final List<String> CHILDREN = List.of("q0603", "q0607", "q0615", "q0618");
    static final ZoneId SCHOOL = ZoneId.of("America/Chicago");
    private static final List<String> ARGUMENTS = List.of("--no-sandbox", "--disable-gpu",
            "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run");
    private static final Pattern WAITING = Pattern.compile("(\\d+) (?:on this tablet|not taken|of another adult)");
    /** Tells every sentence of the region of the newest look, as soon as it stands there. */
    private static final String LISTEN = """
            new MutationObserver(() => {
              const text = document.querySelector('#last .state')?.textContent ?? '';
              if (text !== window.stepwellLast) { window.stepwellLast = text; console.debug('#last ' + text); }
            }).observe(document, { subtree: true, childList: true, characterData: true });
            """;

    private final BrowserContext context;
    private final String address;
    private final Promises promises;
    private Page page;
    private String adult = "";

    private Tablet(BrowserContext context, String address, Promises promises) {
        this.context = context;
        this.address = address;
        this.promises = promises;
        context.setDefaultTimeout(30_000);
        context.onConsoleMessage(message -> {
            if (message.text().startsWith("#last ")) {
                promises.hear(message.text().substring("#last ".length()));
            }
        });
        context.addInitScript(LISTEN);
        page = context.pages().isEmpty() ? context.newPage() : context.pages().getFirst();
    }

    static Playwright playwright() {
        return Playwright.create(new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    }

    static Browser browser(Playwright playwright) {
        return playwright.chromium().launch(new BrowserType.LaunchOptions().setExecutablePath(Path.of("/usr/bin/chromium"))
                .setArgs(ARGUMENTS));
    }

    /** A private window: its storage ends with it. */
    static Tablet inWindow(Browser browser, String address, Promises promises) {
        return inWindow(browser, address, promises, SCHOOL);
    }

    /** The same set to another time zone than the school's. */
    static Tablet inWindow(Browser browser, String address, Promises promises, ZoneId zone) {
        return new Tablet(browser.newContext(new Browser.NewContextOptions().setViewportSize(820, 1180)
                .setLocale("en-US").setTimezoneId(zone.getId())), address, promises);
    }

    /** A browser of its own that keeps its storage in a folder, as on a tablet. */
    static Tablet withStorage(Playwright playwright, Path folder, String address, Promises promises) {
        return new Tablet(playwright.chromium().launchPersistentContext(folder,
                new BrowserType.LaunchPersistentContextOptions().setExecutablePath(Path.of("/usr/bin/chromium"))
                        .setArgs(ARGUMENTS).setViewportSize(820, 1180).setLocale("en-US")
                        .setTimezoneId(SCHOOL.getId())), address, promises);
    }

    /** Ends the browser that keeps its storage in the folder, and all of its processes, without any order. */
    static void kill(Path folder) {
        List<ProcessHandle> mine = ProcessHandle.current().descendants().filter(process -> process.info().arguments()
                .map(all -> List.of(all).contains("--user-data-dir=" + folder)).orElse(false)).toList();
        if (mine.isEmpty()) {
            throw new IllegalStateException("no browser keeps its storage in " + folder);
        }
        mine.forEach(ProcessHandle::destroyForcibly);
        mine.forEach(process -> process.onExit().join());
    }

    Page page() {
        return page;
    }

    BrowserContext context() {
        return context;
    }

    String adult() {
        return adult;
    }

    /** Signs an adult in to this browser, past the page. */
    void signIn(String name) {
        context.request().get(address + "/login").dispose();
        String token = context.cookies(address).stream().filter(cookie -> cookie.name.equals("XSRF-TOKEN"))
                .findFirst().orElseThrow().value;
        APIResponse answer = context.request().post(address + "/login", RequestOptions.create().setMaxRedirects(0)
                .setHeader("X-XSRF-TOKEN", token)
                .setForm(FormData.create().set("username", name).set("password", TableServer.PASSWORD)));
        if (answer.status() != 302 || answer.headers().get("location").contains("error")) {
            throw new IllegalStateException("sign-in answered " + answer.status() + " " + answer.headers());
        }
        answer.dispose();
        adult = name;
    }

    /** The adult whose sign-in this browser kept. */
    void as(String name) {
        adult = name;
    }

    /** The server forgets who this is. */
    void loseSession() {
        context.clearCookies(new BrowserContext.ClearCookiesOptions().setName("JSESSIONID"));
    }

    void open() {
        page.navigate(address + "/table/");
    }

    /** Opens the Table again and again until the condition holds: news of the page is used from one opening to the next. */
    void openUntil(BooleanSupplier condition) {
        for (int opening = 0; opening < 20; opening++) {
            open();
            try {
                page.waitForCondition(condition, new Page.WaitForConditionOptions().setTimeout(3_000));
                return;
            } catch (TimeoutError notYet) {
                // The next opening tells. A page left within a moment of the end of a visit opens on it again.
                if (key("end").isVisible()) {
                    endVisit();
                }
            }
        }
        throw new AssertionError("twenty openings have changed nothing: " + page.locator("body").innerText());
    }

    /** Ends the visit and waits until the page shows it. */
    void endVisit() {
        key("end").click();
        key("start").waitFor();
    }

    /** Opens the Table, seats the same four children and starts the visit, unless it is open already. */
    void openVisit() {
        open();
        until(() -> key("start").isVisible() || key("end").isVisible());
        if (key("start").isVisible()) {
            key("none").click();
            CHILDREN.forEach(child -> key("seat-" + child).click());
            key("start").click();
        }
        key("skill").selectOption("T05");
    }

    /** Waits until the page can be opened without network. */
    void untilKeptForOffline() {
        until(() -> "activated".equals(page.evaluate("() => navigator.serviceWorker.getRegistration('/table/')"
                + ".then(r => r?.active?.state ?? '')")));
    }

    /** One look with a task of its own; returns that task without waiting for anything. */
    String tap(String child, int step) {
        return tap(child, step, LocalDate.now(SCHOOL));
    }

    String tap(String child, int step, LocalDate day) {
        if (page.locator(".cover").count() > 0) {
            page.locator(".cover").click();
        }
        String token = promises.nextToken();
        key("task").fill(token);
        promises.tapped(new Promises.Tap(token, child, step, adult, day));
        key("cell-" + PHRASES.get(step) + "-" + child).click();
        return token;
    }

    /** Milliseconds from one tap until the frame is painted in which the screen calls the look saved. */
    double millisToConfirmation(String child, int step) {
        key("task").fill(promises.nextToken());
        return ((Number) page.evaluate("""
                (key) => new Promise((resolve) => {
                  const state = () => document.querySelector('#last .state').textContent;
                  const token = document.querySelector('[data-key=task]').value;
                  const begin = performance.now();
                  const seen = new MutationObserver(() => {
                    if (state().startsWith('Saved on this tablet') && state().includes(token)) {
                      seen.disconnect();
                      requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - begin)));
                    }
                  });
                  seen.observe(document.getElementById('last'), { subtree: true, childList: true });
                  document.querySelector(`[data-key='${key}']`).click();
                })""", "cell-" + PHRASES.get(step) + "-" + child)).doubleValue();
    }

    /** One look, and waits until the screen calls it saved. */
    String save(String child, int step) {
        String token = tap(child, step);
        untilSaved(token);
        return token;
    }

    void untilSaved(String token) {
        until(() -> promises.calledSaved(token));
    }

    /** Ends the seconds for undoing the way a teacher does who puts the tablet down: the page is hidden. */
    void putDown() {
        page.evaluate("() => { Object.defineProperty(document, 'visibilityState', {value: 'hidden', configurable: true});"
                + "document.dispatchEvent(new Event('visibilitychange')); delete document.visibilityState; }");
    }

    /** The network is said to be back. */
    void wake() {
        page.evaluate("() => window.dispatchEvent(new Event('online'))");
    }

    /** Another tab of the same browser at the Table, in place of the one in hand; returns the one that was. */
    Page anotherTab() {
        Page before = page;
        page = context.newPage();
        return before;
    }

    /** Closes the tab as it is; another is open by then, since a browser without one may end its session. */
    void closeTab() {
        anotherTab().close();
    }

    String countText() {
        return page.locator("#count").innerText();
    }

    /** How many looks the screen says are not on the server. */
    int waiting() {
        Matcher numbers = WAITING.matcher(countText());
        int sum = 0;
        while (numbers.find()) {
            sum += Integer.parseInt(numbers.group(1));
        }
        return sum;
    }

    Locator key(String key) {
        return page.locator("[data-key='" + key + "']");
    }

    /** Waits for a condition, up to a minute. */
    void until(BooleanSupplier condition) {
        try {
            page.waitForCondition(condition, new Page.WaitForConditionOptions().setTimeout(60_000));
        } catch (TimeoutError never) {
            throw new AssertionError("the screen stays at: " + page.locator("body").innerText(), never);
        }
    }

    /** Wakes the page until its screen says that everything is on the server; sends again what was not taken. */
    void drain() {
        putDown();
        wake();
        until(() -> countText().equals("All on the server") || countText().contains("not taken"));
        sendRefusedAgain();
        until(() -> countText().equals("All on the server"));
    }

    /**
     * What the server did not take, the teacher sends again by hand; it may then stand behind later looks. An answer
     * that arrives meanwhile may leave nothing to send.
     */
    private void sendRefusedAgain() {
        while (countText().contains("not taken")) {
            key("outbox").click();
            page.locator("dialog").waitFor();
            Locator first = page.locator("dialog .refused li").first();
            if (first.count() == 0) {
                page.keyboard().press("Escape");
                until(() -> !countText().contains("not taken"));
                return;
            }
            first.locator("b").innerText().lines().flatMap(line -> List.of(line.split(" · ")).stream())
                    .filter(word -> word.startsWith(promises.mark())).forEach(promises::mayStandLater);
            int before = page.locator("dialog .refused li").count();
            first.locator("[data-key='again']").click();
            until(() -> page.locator("dialog").count() == 0);
            until(() -> !countText().contains(before + " not taken"));
        }
    }

    @Override
    public void close() {
        context.close();
    }
}
