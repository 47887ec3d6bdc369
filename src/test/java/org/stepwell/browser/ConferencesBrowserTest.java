package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The schedule of talks is made and printed, two families change places, one has two households, one does not come. */
class ConferencesBrowserTest extends InRealBrowser {

    @Test
    void anEveningIsOfferedFilledSwappedAndPrinted() throws IOException {
        Page page = browser.signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        ByTheBar.open(page, "Families", "Talks with families");
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Talks with families")).waitFor();
        SeenScreen.passes(page, "talks-schedule-empty");
        fill(page, "To", "14:00");
        press(page, "Add these times");
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("The end must come after the beginning.");
        fill(page, "To", "17:00");
        press(page, "Add these times");
        press(page, "Fill free times by name");
        Locator first = page.getByLabel("Family at 3:00–3:15", new Page.GetByLabelOptions().setExact(true));
        Locator second = page.getByLabel("Family at 3:15–3:30", new Page.GetByLabelOptions().setExact(true));
        assertThat(page.getByLabel("did not come, 3:15–3:30")).isVisible();
        String here = first.inputValue();
        String there = second.inputValue();
        assertThat(here).isNotEqualTo(there).endsWith("/1");
        first.selectOption(there);
        assertThat(second).hasValue(here);
        assertThat(first).hasValue(there);
        assertThat(first).isFocused();
        page.getByLabel("Family at 3:30–3:45").selectOption(there.replace("/1", "/2"));
        assertThat(page.getByRole(AriaRole.ALERT)).hasText("Kept, version 4.");
        page.getByLabel("Language of the copy at 3:30–3:45").selectOption("es");
        assertThat(page.getByRole(AriaRole.ALERT)).hasText("Kept, version 5.");
        page.getByLabel("did not come, 3:15–3:30").click();
        assertThat(page.getByLabel("did not come, 3:15–3:30")).hasAttribute("aria-pressed", "true");
        SeenScreen.passes(page, "talks-schedule");
        String address = page.getByText("Print all notes in this order").getAttribute("href");
        try (PDDocument notes = Loader.loadPDF(page.request().get(page.evaluate("location.origin") + address).body())) {
            assertThat(new PDFTextStripper().getText(notes)).contains("Una nota para casa", "A note home about numbers");
        }
        page.setViewportSize(390, 844);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        SeenScreen.passes(page, "talks-schedule-phone-dark");
    }
}
