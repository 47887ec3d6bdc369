package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A whole review of the sample class in a real browser, with its taps counted. */
class ReviewBrowserTest {
    private static final int MOST_TAPS = 60;
    private static RealBrowser browser;
    private int taps;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    private static Page opened(int width, int height, ColorScheme scheme) {
        Page page = browser.signedIn("teacher@sample", width, height, scheme);
        ByTheBar.open(page, "Week", "Weekly review");
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Weekly review")).waitFor();
        return page;
    }

    private void tap(Locator target) {
        target.click();
        taps++;
    }

    @Test
    void aClassIsReviewedInFewTapsAndClosedWithWhatChanges() {
        Page page = opened(820, 1180, ColorScheme.LIGHT);
        SeenScreen.passes(page, "review-portrait");
        SeenScreen.passes(opened(390, 844, ColorScheme.DARK), "review-phone-dark");

        Locator cards = page.locator(".cards > .sheet");
        Locator accept = page.locator("button", new Page.LocatorOptions().setHasText(", as suggested"))
                .filter(new Locator.FilterOptions().setHasNotText("Stay"));
        int moves = accept.count();
        assertThat(moves).isPositive();
        for (int left = moves; left > 0; left--) {
            tap(accept.first());
            assertThat(accept).hasCount(left - 1);
        }
        Locator quiet = page.locator("h2", new Page.LocatorOptions().setHasText("Your call first"))
                .locator("xpath=following-sibling::div[contains(@class,'cards')][1]").locator(":scope > .sheet");
        int ask = quiet.count();
        assertThat(ask).isEqualTo(3);
        for (int left = ask; left > 0; left--) {
            int before = left;
            Locator differs = page.getByText("Your call was");
            assertThat(differs).hasCount(0);
            tap(quiet.first().locator("button", new Locator.LocatorOptions().setHasText("On level")));
            page.waitForCondition(() -> quiet.count() == before - 1 || differs.count() > 0);
            if (differs.count() > 0) {
                tap(quiet.first().locator("button", new Locator.LocatorOptions().setHasText("Keep")));
            }
            assertThat(quiet).hasCount(left - 1);
        }
        for (String all : List.of("Nothing changes for these", "Stay, as suggested")) {
            Locator together = page.locator("button", new Page.LocatorOptions().setHasText(all));
            if (together.count() > 0) {
                tap(together);
                assertThat(together).hasCount(0);
            }
        }
        Locator keep = cards.locator("button", new Locator.LocatorOptions().setHasText("Keep"));
        while (page.getByText("Close the review", new Page.GetByTextOptions().setExact(true)).count() == 0) {
            int before = keep.count();
            tap(keep.first());
            assertThat(keep).hasCount(before - 1);
        }
        page.getByLabel("Who tells whom").first().fill("Ms. Castellane calls");
        page.getByLabel("Who tells whom").first().blur();
        SeenScreen.passes(page, "review-before-closing");
        tap(page.getByText("Close the review", new Page.GetByTextOptions().setExact(true)));
        assertThat(page.getByText("Closed by")).isVisible();
        assertThat(page.getByText("Ms. Castellane calls")).isVisible();
        page.getByText("Compare with the review before").first().click();
        assertThat(page.getByText("No review before this one.").last()).isVisible();
        SeenScreen.passes(page, "review-closed");
        assertThat(taps).as("taps for the class").isLessThanOrEqualTo(MOST_TAPS);
    }
}
