package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import java.io.IOException;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The page knows whose turn it is from what it was given, by a clock that the test moves; no network is asked. */
class TurnsBrowserTest {
    private FaultyServer server;
    private TablePage tablet;
    private Page page;

    /** Two groups, ten minutes each with one to change; the first has been at the table for a minute. */
    @BeforeEach
    void openPage() throws IOException {
        server = new FaultyServer();
        tablet = new TablePage(server.address());
        page = tablet.page;
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
        tablet.open();
    }

    private static String turn(Instant began, int after, int group) {
        return "{\"starts\":\"" + began.plusSeconds(60L * after) + "\",\"ends\":\""
                + began.plusSeconds(60L * (after + 10)) + "\",\"group\":" + group + "}";
    }

    @AfterEach
    void closePage() {
        tablet.close();
        server.close();
    }

    /** Time goes by with nobody at the tablet, which covers itself; one tap uncovers it. */
    private void pass(int minutes) {
        page.clock().fastForward(minutes * 60_000L);
        tablet.key("uncover").click();
    }

    private void seated(String... children) {
        assertThat(page.locator("#setup .roster [aria-pressed='true']")).hasCount(children.length);
        for (String child : children) {
            assertThat(tablet.key("seat-" + child)).hasAttribute("aria-pressed", "true");
        }
    }

    @Test
    void opensOnTheGroupWhoseTurnItIsAndOffersTheNextWithoutTakingTheVisitAway() {
        seated("k1", "k5");
        assertThat(tablet.key("group-1")).containsText("now");
        tablet.key("start").click();
        assertThat(page.locator("#task select")).hasValue("T02");
        assertThat(page.locator(".turn")).hasCount(0);
        tablet.context.setOffline(true);
        pass(11);
        assertThat(page.locator(".turn")).containsText("It is the turn of group 2.");
        assertThat(tablet.key("child-k1")).isVisible(); // The visit goes on until a hand ends it.
        tablet.key("turn").click();
        assertThat(tablet.key("child-k6")).isVisible();
        assertThat(tablet.key("child-k7")).isVisible();
        assertThat(page.locator("#task select")).hasValue("T05");
        assertThat(page.locator("#task input")).hasValue("16");
        assertThat(page.locator(".turn")).hasCount(0);
        tablet.key("cell-made_ten-k6").click();
        assertThat(page.locator("#last .state")).containsText("Saved on this tablet");
    }

    @Test
    void theGroupChangesByItselfBetweenVisitsUntilAHandHasChosen() {
        seated("k1", "k5");
        pass(11);
        seated("k6", "k7");
        tablet.key("seat-k8").click();
        tablet.key("seat-k6").click();
        pass(2);
        seated("k7", "k8");
        tablet.key("group-1").click();
        seated("k1", "k5");
        pass(60);
        seated("k1", "k5");
        assertThat(page.locator("[data-key^='group-']")).hasCount(2);
        assertThat(page.getByText("now", new Page.GetByTextOptions().setExact(true))).hasCount(0);
    }

    @Test
    void aVisitThatWasOpenGoesOnAfterAReloadWhoeverHasTheTurn() {
        tablet.key("group-2").click();
        tablet.key("start").click();
        assertThat(tablet.key("child-k6")).isVisible();
        page.reload();
        assertThat(tablet.key("child-k6")).isVisible();
        assertThat(page.locator(".turn")).containsText("group 1");
        assertThat(server.kept()).isEmpty();
    }
}
