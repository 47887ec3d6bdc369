package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The sealed Table against the program itself: out without a session, sealed at sign-out, ended on the screen. */
class TabletsBrowserTest {
    private static final String ON_DISK = """
            async () => {
              const open = indexedDB.open('stepwell-table');
              const db = await new Promise((done) => { open.onsuccess = () => done(open.result); });
              const all = (name) => new Promise((done) => {
                const asked = db.transaction(name).objectStore(name).getAll();
                asked.onsuccess = () => done(asked.result);
              });
              const rows = [];
              for (const name of db.objectStoreNames) {
                for (const row of await all(name)) {
                  rows.push(`${name} ${JSON.stringify(row, (k, v) => v instanceof CryptoKey ? 'a key' : v)}`);
                }
              }
              db.close();
              return rows.join('\\n');
            }""";
    private static RealBrowser browser;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    private static String onDisk(Page page) {
        return page.evaluate(ON_DISK).toString();
    }

    private static void putDown(Page page) {
        page.evaluate("() => { Object.defineProperty(document, 'visibilityState', {value: 'hidden', configurable: true});"
                + "document.dispatchEvent(new Event('visibilitychange')); delete document.visibilityState; }");
    }

    private static void logOne(Page page) {
        page.locator("[data-key^='seat-']").first().click();
        page.locator("[data-key='start']").click();
        page.locator("[data-key^='cell-']").first().click();
        page.locator("#last .state", new Page.LocatorOptions().setHasText("Saved on this tablet")).waitFor();
    }

    /** A second browser of the same adult stands in the list and is ended from it. */
    private static void signIns(Page page) {
        Page other = browser.signedIn("coteacher@sample", 820, 1180, ColorScheme.DARK);
        page.navigate(browser.server().address() + "/sign-ins");
        assertThat(page.locator("main")).containsText("This one. Chrome, Linux, from ");
        assertThat(page.locator("main")).containsText("signed in. Chrome, Linux");
        SeenScreen.passes(page, "sign-ins-portrait");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("End all others")).click();
        page.getByText("One other session is ended.").waitFor();
        other.navigate(browser.server().address() + "/tablets");
        other.waitForURL("**/login**");
        other.context().close();
        page.navigate(browser.server().address() + "/tablets");
    }

    @Test
    void aLookLeavesWithoutASessionAndNothingReadableIsLeftAtSignOut() throws IOException {
        Page page = browser.signedIn("coteacher@sample", 820, 1180, ColorScheme.LIGHT);
        BrowserContext context = page.context();
        page.navigate(browser.server().address() + "/table/");
        page.waitForCondition(() -> onDisk(page).contains("a key"));
        logOne(page);
        assertThat(onDisk(page)).contains("outbox").doesNotContain("observed_at").doesNotContain("coteacher");
        List<Cookie> session = context.cookies();
        context.clearCookies();
        page.waitForResponse(response -> response.url().endsWith("/api/observations") && response.status() == 200,
                () -> putDown(page));
        assertThat(page.locator("#count")).containsText("All on the server");
        context.addCookies(session);
        page.navigate(browser.server().address() + "/tablets");
        Locator pass = page.getByText("Chrome · Linux").first();
        assertThat(pass).isVisible();
        SeenScreen.passes(page, "tablets-portrait");
        signIns(page);
        page.getByText("End", new Page.GetByTextOptions().setExact(true)).first().click();
        assertThat(page.getByText("It adds nothing any more.")).isVisible();
        page.getByText("Sign out").click();
        page.waitForURL("**/login?out");
        page.waitForCondition(() -> !onDisk(page).contains("a key"));
        assertThat(onDisk(page)).doesNotContain("box");
    }
}
