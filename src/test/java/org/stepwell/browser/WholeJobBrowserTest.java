package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The whole job in a real browser against the real program. */
class WholeJobBrowserTest {
    private static RealBrowser browser;
    private static RunningServer server;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
        server = browser.server();
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    private static Page signedIn(String name, int width, int height, ColorScheme scheme) {
        return browser.signedIn(name, width, height, scheme);
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
                .setFullPage(false));
    }

    private static void open(Page page, String link) {
        ByTheBar.open(page, "Week", link);
        page.locator("h1").filter(new Locator.FilterOptions().setHasText(link)).waitFor();
    }

    @Test
    void showsEveryScreenWithoutFindings() {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            Page page = signedIn("teacher@sample", 820, 1180, scheme);
            String suffix = "-" + scheme.name().toLowerCase(java.util.Locale.ROOT);
            findNothing(page, "today" + suffix);
            picture(page, "today" + suffix);
            open(page, "Class map");
            findNothing(page, "class map" + suffix);
            picture(page, "class-map" + suffix);
            page.getByText("Devika").click();
            page.locator("svg.chart").first().waitFor();
            findNothing(page, "child" + suffix);
            picture(page, "child" + suffix);
            open(page, "Suggestions");
            findNothing(page, "suggestions" + suffix);
            picture(page, "suggestions" + suffix);
            page.context().close();
        }
    }

    @Test
    void takesASuggestionFromTheListToTheChildsPage() {
        Page page = signedIn("teacher@sample", 1180, 820, ColorScheme.LIGHT);
        open(page, "Suggestions");
        Locator card = page.locator(".sheet").filter(new Locator.FilterOptions()
                .setHas(page.getByText("Accept:"))).first();
        String name = card.locator("h3").innerText();
        card.getByText("Why, and what would settle it").click();
        assertThat(card.getByText("Measured against required")).isVisible();
        picture(page, "suggestion-open");
        card.getByText("Accept:").click();
        assertThat(page.locator("h3", new Page.LocatorOptions().setHasText(name)).locator("..")
                .getByText("Accept:")).hasCount(0);
        open(page, "Class map");
        page.getByText(name, new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.locator("h1")).hasText(name);
        assertThat(page.getByText(", was ").first()).isVisible();
        page.context().close();
    }

    @Test
    void aChildChosenFarDownTheMapIsReadFromTheTop() {
        Page page = signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        open(page, "Class map");
        Locator last = page.locator("tbody th a").last();
        last.scrollIntoViewIfNeeded();
        page.waitForFunction("() => scrollY > 200");
        last.click();
        page.locator("svg.chart").first().waitFor();
        page.waitForFunction("() => scrollY === 0");
        page.context().close();
    }

    @Test
    void correctsALookAndKeepsTheOldOne() {
        Page page = signedIn("teacher@sample", 1180, 820, ColorScheme.LIGHT);
        open(page, "Class map");
        page.getByText("Freya").click();
        Locator first = page.locator(".looks li").first();
        first.locator("summary").click();
        first.getByLabel("Step").selectOption("2");
        first.getByText("Save correction").click();
        assertThat(page.getByText("corrected, kept to be read").first()).isVisible();
        page.context().close();
    }

    @Test
    void showsASpecialistTheSharedChildrenOnly() {
        Page page = signedIn("specialist@sample", 390, 844, ColorScheme.LIGHT);
        open(page, "Class map");
        assertThat(page.getByText("Amadou")).isVisible();
        assertThat(page.getByText("Devika")).hasCount(0);
        picture(page, "phone-class-map");
        page.context().close();
    }

    @Test
    void carriesALookFromTheTableToTheChildsPage() {
        Page page = signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        page.navigate(server.address() + "/table/");
        for (String name : List.of("Devika", "Tane", "Noor")) {
            page.getByText(name).first().click();
        }
        findNothing(page, "table, choosing");
        page.getByText("Start", new Page.GetByTextOptions().setExact(true)).click();
        picture(page, "table");
        findNothing(page, "table, at work");
        page.locator("button", new Page.LocatorOptions().setHasText("Tane")).nth(1).click();
        com.microsoft.playwright.Response sent = page.waitForResponse("**/api/observations",
                () -> page.getByText("Tens, then ones, nothing out").click());
        assertThat(sent.status()).as(sent.text()).isEqualTo(200);
        assertThat(sent.text()).contains("stored");
        page.navigate(server.address() + "/class-map");
        page.getByText("Tane").click();
        assertThat(page.locator(".looks li").first()).containsText("Imogen Castellane");
        page.context().close();
    }
}
