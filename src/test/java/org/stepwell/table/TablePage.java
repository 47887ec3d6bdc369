package org.stepwell.table;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** One tablet with the Table page open, and what a hand does on it. */
final class TablePage implements AutoCloseable {
    private static final Playwright PLAYWRIGHT = Playwright.create(new Playwright.CreateOptions()
            .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    private static final Browser BROWSER = PLAYWRIGHT.chromium().launch(new BrowserType.LaunchOptions()
            .setExecutablePath(Path.of("/usr/bin/chromium")).setArgs(List.of("--no-sandbox", "--disable-gpu")));

    final BrowserContext context;
    final Page page;
    private final String address;

    TablePage(String address) {
        this.address = address;
        context = BROWSER.newContext(new Browser.NewContextOptions().setViewportSize(820, 1180).setLocale("en-US")
                .setTimezoneId("America/Chicago"));
        context.setDefaultTimeout(15000);
        page = context.newPage();
    }

    TablePage open() {
        page.navigate(address + "/table/");
        return this;
    }

    Locator key(String key) {
        return page.locator("[data-key='" + key + "']");
    }

    Locator count() {
        return page.locator("#count");
    }

    void seat(String child) {
        key("seat-" + child).click();
        key("start").click();
    }

    void log(String phrase, String child) {
        key("cell-" + phrase + "-" + child).click();
        page.locator("#last .state", new Page.LocatorOptions().setHasText("Saved on this tablet")).waitFor();
    }

    /** The page is hidden, as when the teacher puts the tablet down: the seconds for undoing are over. */
    void putDown() {
        page.evaluate("() => { Object.defineProperty(document, 'visibilityState', {value: 'hidden', configurable: true});"
                + "document.dispatchEvent(new Event('visibilitychange')); delete document.visibilityState; }");
    }

    void online() {
        page.evaluate("() => window.dispatchEvent(new Event('online'))");
    }

    void until(Supplier<Boolean> holds) {
        page.waitForCondition(holds::get, new Page.WaitForConditionOptions().setTimeout(15000));
    }

    /** Waits until key and pass are on the tablet and the class of the day is kept. */
    void equipped() {
        until(() -> onDisk().contains("page/class"));
    }

    /** Everything that lies in this tablet's database, keys by what a script can read of them. */
    String onDisk() {
        return page.evaluate("""
                async () => {
                  const open = indexedDB.open('stepwell-table');
                  const db = await new Promise((done) => { open.onsuccess = () => done(open.result); });
                  const lines = [];
                  for (const name of db.objectStoreNames) {
                    const store = db.transaction(name).objectStore(name);
                    const all = (q) => new Promise((done) => { q.onsuccess = () => done(q.result); });
                    const keys = await all(store.getAllKeys());
                    const values = await all(db.transaction(name).objectStore(name).getAll());
                    values.forEach((value, i) => lines.push(`${name}/${keys[i]} ${JSON.stringify(value, (k, v) =>
                      v instanceof CryptoKey ? `key extractable=${v.extractable}` : v)}`));
                  }
                  db.close();
                  return lines.join('\\n');
                }""").toString();
    }

    @Override
    public void close() {
        context.close();
    }
}
