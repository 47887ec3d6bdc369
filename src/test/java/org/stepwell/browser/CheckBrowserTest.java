package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A unit check in a real browser: made, scored by taps and by keyboard, by two adults, read as a report. */
class CheckBrowserTest {
    private static RealBrowser browser;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    private static void findNothing(Page page, String name) {
        List<String> found = new ArrayList<>();
        for (ColorScheme scheme : List.of(ColorScheme.DARK, ColorScheme.LIGHT)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            new AxeBuilder(page).withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze()
                    .getViolations().forEach(rule -> found.add(scheme + " " + rule.getId() + " "
                            + rule.getNodes().getFirst().getHtml()));
            page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/" + name + "-"
                    + scheme.name().toLowerCase(java.util.Locale.ROOT) + ".png")));
        }
        assertThat(found).as(name).isEmpty();
    }

    private static Page made() {
        Page page = browser.signedIn("teacher@sample", 1180, 820, ColorScheme.LIGHT);
        ByTheBar.open(page, "Unit", "Unit check");
        page.getByText("Make a blueprint").click();
        assertThat(page.getByText("Save blueprint")).isVisible();
        assertThat(page.getByText("20 items")).isVisible();
        return page;
    }

    private static void score(Page page) {
        page.locator("main a.button").getByText("Score", new Locator.GetByTextOptions().setExact(true)).first().click();
        page.locator("sw-check-grid table").waitFor();
    }

    private static Locator cell(Page page, int row, int column) {
        return page.locator("sw-check-grid tbody tr").nth(row).locator("td[data-item]").nth(column);
    }

    private static void stored(Page page) {
        assertThat(page.locator(".check-status")).containsText("Everything is stored.");
    }

    private static void holds(Locator cell, String mark) {
        assertThat(cell).hasAttribute("data-mark", mark);
    }

    @Test
    void scoresACheckByTapsAndKeysAndReadsTheReport() {
        Page page = made();
        page.getByLabel("Question i01").fill("Show 17. How many tens?");
        page.getByLabel("Answer i01").fill("1");
        page.getByLabel("Answer i01").blur();
        page.getByText("Save blueprint").click();
        assertThat(page.getByText("Saved.")).isVisible();
        findNothing(page, "check-blueprint");
        score(page);
        assertThat(page.locator("sw-check-grid tbody tr")).hasCount(23);
        assertThat(page.locator("td[data-mark=cleared]")).hasCount(23 * 20);
        taps(page);
        keys(page);
        findNothing(page, "check-grid");
        page.reload();
        page.locator("sw-check-grid table").waitFor();
        assertThat(page.locator(".check-status")).containsText("2 of 23 children complete.");
        holds(cell(page, 0, 0), "wrong");
        holds(cell(page, 0, 7), "not_reached");
        holds(cell(page, 1, 2), "half");
        for (int row = 3; row < 23; row++) {
            cell(page, row, row % 20).click();
            cell(page, row, (row + 5) % 20).click();
            page.locator("[data-do=rest]").nth(row).click();
            holds(cell(page, row, (row + 9) % 20), "right");
        }
        stored(page);
        report(page);
        page.context().close();
    }

    private static void taps(Page page) {
        cell(page, 0, 0).click();
        page.locator("[data-pen=not_reached]").click();
        cell(page, 0, 7).click();
        cell(page, 0, 8).click();
        cell(page, 0, 8).click();
        holds(cell(page, 0, 8), "cleared");
        page.locator("[data-do=rest]").first().click();
        holds(cell(page, 0, 8), "right");
        holds(cell(page, 0, 0), "wrong");
        cell(page, 0, 0).press("ArrowRight");
        cell(page, 0, 1).press("ArrowLeft");
        page.locator("[data-pen=wrong]").click();
    }

    private static void keys(Page page) {
        cell(page, 1, 0).focus();
        for (String key : List.of("1", "0", "5", "n", "1", "Delete", "r")) {
            page.keyboard().press(key);
        }
        holds(cell(page, 1, 1), "wrong");
        holds(cell(page, 1, 2), "half");
        holds(cell(page, 1, 3), "not_reached");
        holds(cell(page, 1, 19), "right");
        assertThat(cell(page, 2, 0)).isFocused();
        page.locator("[data-do=absent]").nth(2).click();
        assertThat(page.locator("[data-do=absent]").nth(2)).hasAttribute("aria-pressed", "true");
        cell(page, 1, 1).focus();
        page.keyboard().press("0");
        page.keyboard().press("ArrowLeft");
        page.keyboard().press("Enter");
        holds(cell(page, 1, 1), "cleared");
        page.keyboard().press("Enter");
        holds(cell(page, 1, 1), "wrong");
        assertThat(page.locator(".check-detail")).containsText("i02");
        page.locator(".check-detail [data-error]").first().click();
        assertThat(page.locator(".check-detail [data-error]").first()).hasAttribute("aria-pressed", "true");
        stored(page);
    }

    private static void report(Page page) {
        page.locator("main a.button").getByText("Results").click();
        assertThat(page.getByText("22 of 23 children, 20 items.")).isVisible();
        assertThat(page.getByText("could as well be anything from").first()).isVisible();
        assertThat(page.locator("table.figures").first().locator("tbody tr")).hasCount(22);
        findNothing(page, "check-results");
        page.getByText("Let these marks count").click();
        assertThat(page.getByText("These marks count as evidence.")).isVisible();
        page.locator("table.figures").nth(1).scrollIntoViewIfNeeded();
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/check-results-all.png"))
                .setFullPage(true));
        page.setViewportSize(390, 844);
        findNothing(page, "check-results-phone");
        ByTheBar.open(page, "Unit", "Unit check");
        assertThat(page.getByText("22 of 23 children have marks").first()).isVisible();
    }

    @Test
    void twoAdultsSeeEachOthersMarksAndOverwriteNothingUnseen() {
        Page first = made();
        score(first);
        Page second = browser.signedIn("coteacher@sample", 820, 1180, ColorScheme.LIGHT);
        second.navigate(first.url());
        second.locator("sw-check-grid table").waitFor();
        second.route("**/api/checks/*?*", route -> route.abort());
        cell(first, 4, 4).click();
        stored(first);
        second.locator("[data-pen=half]").click();
        cell(second, 4, 4).click();
        assertThat(second.locator("sw-check-grid [role=alert]")).containsText("meanwhile");
        holds(cell(second, 4, 4), "wrong");
        findNothing(second, "check-two-adults");
        cell(second, 4, 4).click();
        holds(cell(second, 4, 4), "half");
        stored(second);
        assertThat(cell(first, 4, 4)).hasAttribute("data-mark", "half",
                new LocatorAssertions.HasAttributeOptions().setTimeout(30_000));
        first.context().close();
        second.context().close();
    }

    @Test
    void tapsWithoutNetworkWaitAndArriveAfterAReload() {
        Page page = made();
        score(page);
        page.route("**/api/checks/*/marks", route -> route.abort());
        cell(page, 0, 0).click();
        cell(page, 0, 1).click();
        assertThat(page.locator(".check-status")).containsText("waiting in this tab: 2");
        page.onDialog(dialog -> dialog.accept());
        page.reload();
        page.locator("sw-check-grid table").waitFor();
        holds(cell(page, 0, 1), "wrong");
        page.unroute("**/api/checks/*/marks");
        assertThat(page.locator(".check-status")).containsText("Everything is stored.",
                new LocatorAssertions.ContainsTextOptions().setTimeout(30_000));
        page.reload();
        page.locator("sw-check-grid table").waitFor();
        holds(cell(page, 0, 0), "wrong");
        holds(cell(page, 0, 1), "wrong");
        page.context().close();
    }
}
