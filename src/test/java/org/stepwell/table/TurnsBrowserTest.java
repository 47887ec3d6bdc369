package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.Route;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The page knows whose turn it is from what it was given, by a clock that the test moves; no network is asked. */
class TurnsBrowserTest {
    private static Playwright playwright;
    private static Browser browser;
    private FaultyServer server;
    private BrowserContext context;
    private Page page;

    @BeforeAll
    static void openBrowser() {
        playwright = Playwright.create(new Playwright.CreateOptions()
                .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright.chromium().launch(new BrowserType.LaunchOptions()
                .setExecutablePath(Path.of("/usr/bin/chromium"))
                .setArgs(List.of("--no-sandbox", "--disable-gpu")));
    }

    @AfterAll
    static void closeBrowser() {
        playwright.close();
    }

    /** Two groups, ten minutes each with one to change; the first has been at the table for a minute. */
    @BeforeEach
    void openPage() throws IOException {
        server = new FaultyServer();
        context = browser.newContext(new Browser.NewContextOptions().setViewportSize(820, 1180).setLocale("en-US")
                .setTimezoneId("America/Chicago"));
        context.setDefaultTimeout(15000);
        page = context.newPage();
        page.clock().install();
        Instant began = Instant.now().minusSeconds(60);
        String block = "\"groups\":[{\"group\":1,\"children\":[\"k1\",\"k5\"],\"skill\":\"T02\",\"number\":\"\"},"
                + "{\"group\":2,\"children\":[\"k6\",\"k7\"],\"skill\":\"T05\",\"number\":\"16\"}],\"block\":["
                + turn(began, 0, 1) + "," + turn(began, 11, 2) + "],";
        page.route("**/api/table", route -> {
            var answer = route.fetch();
            route.fulfill(new Route.FulfillOptions().setResponse(answer).setBody(answer.text().replaceFirst("\\{",
                    "{" + block)));
        });
        page.navigate(server.address() + "/table/");
    }

    private static String turn(Instant began, int after, int group) {
        return "{\"starts\":\"" + began.plusSeconds(60L * after) + "\",\"ends\":\""
                + began.plusSeconds(60L * (after + 10)) + "\",\"group\":" + group + "}";
    }

    @AfterEach
    void closePage() {
        context.close();
        server.close();
    }

    private Locator key(String key) {
        return page.locator("[data-key='" + key + "']");
    }

    /** Time goes by with nobody at the tablet, which covers itself; one tap uncovers it. */
    private void pass(int minutes) {
        page.clock().fastForward(minutes * 60_000L);
        key("uncover").click();
    }

    private void seated(String... children) {
        assertThat(page.locator("#setup .roster [aria-pressed='true']")).hasCount(children.length);
        for (String child : children) {
            assertThat(key("seat-" + child)).hasAttribute("aria-pressed", "true");
        }
    }

    @Test
    void opensOnTheGroupWhoseTurnItIsAndOffersTheNextWithoutTakingTheVisitAway() {
        seated("k1", "k5");
        assertThat(key("group-1")).containsText("now");
        key("start").click();
        assertThat(page.locator("#task select")).hasValue("T02");
        assertThat(page.locator(".turn")).hasCount(0);
        context.setOffline(true);
        pass(11);
        assertThat(page.locator(".turn")).containsText("It is the turn of group 2.");
        assertThat(key("child-k1")).isVisible(); // The visit goes on until a hand ends it.
        key("turn").click();
        assertThat(key("child-k6")).isVisible();
        assertThat(key("child-k7")).isVisible();
        assertThat(page.locator("#task select")).hasValue("T05");
        assertThat(page.locator("#task input")).hasValue("16");
        assertThat(page.locator(".turn")).hasCount(0);
        key("cell-made_ten-k6").click();
        assertThat(page.locator("#last .state")).containsText("Saved on this tablet");
    }

    @Test
    void theGroupChangesByItselfBetweenVisitsUntilAHandHasChosen() {
        seated("k1", "k5");
        pass(11);
        seated("k6", "k7");
        key("seat-k8").click();
        key("seat-k6").click();
        pass(2);
        seated("k7", "k8");
        key("group-1").click();
        seated("k1", "k5");
        pass(60);
        seated("k1", "k5");
        assertThat(page.locator("[data-key^='group-']")).hasCount(2);
        assertThat(page.getByText("now", new Page.GetByTextOptions().setExact(true))).hasCount(0);
    }

    @Test
    void aVisitThatWasOpenGoesOnAfterAReloadWhoeverHasTheTurn() {
        key("group-2").click();
        key("start").click();
        assertThat(key("child-k6")).isVisible();
        page.reload();
        assertThat(key("child-k6")).isVisible();
        assertThat(page.locator(".turn")).containsText("group 1");
        assertThat(server.kept()).isEmpty();
    }
}
