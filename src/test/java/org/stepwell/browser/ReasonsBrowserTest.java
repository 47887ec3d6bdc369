package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Cookie;
import com.microsoft.playwright.options.Media;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Reasons, trends and what would have been under other rules, on the tablet, the phone and in the dark. */
class ReasonsBrowserTest {
    private static RealBrowser browser;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    private static void findNothing(Page page, String what) {
        List<String> found = new AxeBuilder(page)
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze()
                .getViolations().stream().map(rule -> rule.getId() + " " + rule.getNodes().getFirst().getHtml())
                .toList();
        assertThat(found).as(what).isEmpty();
    }

    private static void picture(Page page, String name) {
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/" + name + ".png"))
                .setFullPage(true));
    }

    private static void child(Page page, String name) {
        ByTheBar.open(page, "Week", "Class map");
        page.getByText(name, new Page.GetByTextOptions().setExact(true)).click();
        page.locator("svg.chart").first().waitFor();
    }

    @Test
    void drawsTheUnitAndASkillOnEveryScreen() {
        record Screen(String name, int width, int height, ColorScheme scheme) {}
        for (Screen screen : List.of(new Screen("tablet-light", 820, 1180, ColorScheme.LIGHT),
                new Screen("phone-dark", 390, 844, ColorScheme.DARK))) {
            Page page = browser.signedIn("teacher@sample", screen.width(), screen.height(), screen.scheme());
            child(page, "Marisol");
            assertThat(page.locator("svg.chart")).hasCount(2);
            for (Locator summary : page.locator("details > summary", new Page.LocatorOptions()
                    .setHasText(java.util.regex.Pattern.compile("Growth in numbers|The same as a table"))).all()) {
                summary.click();
            }
            assertThat(page.getByText("95 % interval of the share")).isVisible();
            findNothing(page, "child " + screen.name());
            page.locator(".sheet").nth(1).screenshot(new Locator.ScreenshotOptions()
                    .setPath(Path.of("target/screens/trend-" + screen.name() + ".png")));
            page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
            assertThat(page.evaluate("getComputedStyle(document.querySelector('svg.chart')).color"))
                    .as("black ink on paper").isEqualTo("rgb(0, 0, 0)");
            page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
            int wide = (int) page.evaluate("document.documentElement.scrollWidth");
            assertThat(wide).as("nothing hangs over the edge").isLessThanOrEqualTo(screen.width());
            page.context().close();
        }
    }

    @Test
    void triesOtherRulesOnTheHistoryOfTheClass() {
        Page page = browser.signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        ByTheBar.open(page, "Week", "Suggestions");
        page.getByText("What if: try other rules").click();
        page.getByText("Try", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByText("Moves these rules would have made")).isVisible();
        findNothing(page, "what if");
        picture(page, "what-if-tablet");
        page.getByLabel("Rules to try").selectOption("own");
        page.getByLabel("Rule text").fill("name = mine\nenough cats at least 2\n");
        page.getByText("Try", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByText("line 2: cats is not a known measure")).isVisible();
        findNothing(page, "what if, own rules");
        picture(page, "what-if-own");
        assertThat((int) page.evaluate("document.documentElement.scrollWidth")).isLessThanOrEqualTo(820);
        page.context().close();
    }

    @Test
    void givesTheReasonFirstAndTheRestOneTapAwayInTheReadersLanguage() {
        Page page = browser.signedIn("teacher@sample", 1180, 820, ColorScheme.LIGHT);
        page.context().addCookies(List.of(new Cookie("stepwell-language", "es").setUrl(browser.server().address())));
        page.navigate(browser.server().address() + "/suggestions");
        Locator card = page.locator(".sheet").filter(new Locator.FilterOptions().setHasText("Devika")).first();
        card.locator("details > summary").first().click();
        assertThat(card.getByText("concuerda con un trabajo más profundo").first()).isVisible();
        assertThat(card.getByText("Lo medido y lo requerido").first()).isVisible();
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/suggestions-es.png")));
        card.screenshot(new Locator.ScreenshotOptions().setPath(Path.of("target/screens/suggestion-es.png")));
        page.context().close();
    }
}
