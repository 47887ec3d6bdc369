package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Files in and out of a class in a real browser against the real program. */
class FilesBrowserTest {
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

    private static Page files(String name) {
        Page page = browser.signedIn(name, 820, 1180, ColorScheme.LIGHT);
        ByTheBar.open(page, "Class", "People and files");
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("People and files")).waitFor();
        return page;
    }

    private static void choose(Page page, String name, String text) {
        page.locator("vaadin-upload input[type=file]").setInputFiles(
                new FilePayload(name, "text/csv", text.getBytes(StandardCharsets.UTF_8)));
    }

    private static String download(Page page, String name) {
        Download download = page.waitForDownload(() -> page.locator("a.button").getByText(name).click());
        try {
            return Files.readString(download.path());
        } catch (IOException failed) {
            throw new java.io.UncheckedIOException(failed);
        }
    }

    @Test
    void triesARosterFirstNamesTheBadRowAndTakesTheRest() {
        Page page = files("teacher@sample");
        List<String> found = new AxeBuilder(page)
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze()
                .getViolations().stream().map(rule -> rule.getId() + " " + rule.getNodes().getFirst().getHtml())
                .toList();
        assertThat(found).isEmpty();
        String before = download(page, "roster.csv");
        choose(page, "roster.csv", "child,given_name,family_name,grade,class,start,end\n"
                + "new-1,Ilse,Brandvold,1,,,\nnew-2,,Nameless,1,,,\n");
        assertThat(page.getByText("Tried: 1 good row, 1 problem. Nothing is stored yet.")).isVisible();
        assertThat(page.getByText("line 3, column given_name")).isVisible();
        assertThat(download(page, "roster.csv")).isEqualTo(before);
        page.getByText("Take in all but the reported rows").click();
        assertThat(page.getByText("1 row taken into")).isVisible();
        assertThat(download(page, "roster.csv")).contains("new-1,Ilse,Brandvold").doesNotContain("new-2");
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/files.png")));
        page.context().close();
    }

    @Test
    void takesBackItsOwnLooksWithoutDoublingOne() {
        Page page = files("teacher@sample");
        String before = download(page, "observations.csv");
        page.getByLabel("File", new Page.GetByLabelOptions().setExact(true)).selectOption("OBSERVATIONS");
        choose(page, "observations.csv", before);
        page.getByText("Take it in").click();
        assertThat(page.getByText("0 looks stored")).isVisible();
        assertThat(page.getByText("0 refused")).isVisible();
        assertThat(download(page, "observations.csv")).isEqualTo(before);
        page.context().close();
    }
}
