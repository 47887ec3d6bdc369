package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A page for home is read, changed, stopped by a word, approved and printed, in a real browser. */
class NotesBrowserTest {
    private static RealBrowser browser;

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
        ByTheBar.open(page, "Families", "Notes home");
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Notes home")).waitFor();
        return page;
    }

    @Test
    void aWordThatStaysAtSchoolStopsThePageUntilItIsMeant() throws IOException {
        Page page = opened(820, 1180, ColorScheme.LIGHT);
        SeenScreen.passes(page, "notes-portrait");
        page.getByLabel("Devika, English").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Devika")).waitFor();
        SeenScreen.passes(page, "note-portrait");
        Locator can = page.getByLabel("What Devika can do");
        String drafted = can.inputValue();
        assertThat(drafted).startsWith("On ").contains("Devika");
        can.fill(drafted + "\nDevika found a smart way to count.");
        can.blur();
        assertThat(page.getByText("“smart” labels or compares a child.").first()).isVisible();
        page.getByText("Approve", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("smart");
        page.locator("button", new Page.LocatorOptions().setHasText("It is meant")).click();
        page.getByText("Approve", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("Approved.");
        String address = page.getByText("Open as PDF").getAttribute("href");
        byte[] pdf = page.request().get(page.evaluate("location.origin") + address).body();
        Files.write(Path.of("target/screens/note.pdf"), pdf);
        assertThat(new PDFTextStripper().getText(Loader.loadPDF(pdf))).contains("a smart way to count")
                .doesNotContain("Draft");
        page.locator("main a.button", new Page.LocatorOptions().setHasText("Español")).click();
        assertThat(page.getByText("The page in the other language was kept later than this one.")).isVisible();
    }

    @Test
    void duringATalkNothingButThisChildIsOnTheScreen() {
        Page page = opened(820, 1180, ColorScheme.LIGHT);
        java.util.List<String> names = page.locator("tbody th").allInnerTexts();
        assertThat(names).hasSizeGreaterThan(20).contains("Freya");
        page.getByLabel("Freya, English").click();
        page.getByText("Approve", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("Approved.");
        page.getByText("Screen for the talk").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Freya")).waitFor();
        assertThat(page.locator("header, nav, [role=alert], [role=status]")).hasCount(0);
        String everything = page.content();
        assertThat(names.stream().filter(name -> !name.equals("Freya")).filter(name -> everything.matches(
                "(?s).*\\b" + java.util.regex.Pattern.quote(name) + "\\b.*")).toList()).isEmpty();
        assertThat(page.title()).isEqualTo("Stepwell");
        SeenScreen.passes(page, "talk-portrait");
        page.getByText("Keep", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByText("one of the two is enough")).isVisible();
        page.getByLabel("What the family said").fill("Counts the stairs at home.");
        page.getByLabel("What the family said").blur();
        page.getByText("Keep", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByText("Thank you. It is written down.")).isVisible();
        page.setViewportSize(390, 844);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        SeenScreen.passes(page, "talk-phone-dark");
        page.getByText("Back to the page").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Freya")).waitFor();
        assertThat(page.locator("header nav").first()).isVisible();
    }

    @Test
    void fitsAPhoneAndTheDark() {
        Page page = opened(390, 844, ColorScheme.DARK);
        SeenScreen.passes(page, "notes-phone-dark");
        page.getByLabel("Amadou, Español").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Amadou")).waitFor();
        SeenScreen.passes(page, "note-phone-dark");
    }
}
