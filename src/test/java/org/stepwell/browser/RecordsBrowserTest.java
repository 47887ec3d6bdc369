package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import org.junit.jupiter.api.Test;

/** A request is written down by a teacher and answered by a lead, who then erases the child. */
class RecordsBrowserTest extends InRealBrowser {
    @Test
    void aRequestIsAnsweredAndAChildIsErased() {
        Page teacher = browser.signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        opens(teacher, "Freya");
        teacher.locator("summary").filter(new Locator.FilterOptions().setHasText("Write down a request")).click();
        press(teacher, "Write the request down");
        assertThat(teacher.getByRole(AriaRole.ALERT)).containsText("The request is written down.");
        SeenScreen.passes(teacher, "records-teacher");

        Page lead = browser.signedIn("lead@sample", 820, 1180, ColorScheme.LIGHT);
        ByTheBar.open(lead, "Class", "Records");
        lead.getByLabel("Open: Freya").first().click();
        lead.locator("summary").filter(new Locator.FilterOptions().setHasText("What happened")).click();
        press(lead, "Write it down");
        assertThat(lead.getByText("The family saw the records on")).isVisible();
        lead.locator("summary").filter(new Locator.FilterOptions().setHasText("Erase all records")).click();
        SeenScreen.passes(lead, "records-lead");
        lead.setViewportSize(390, 844);
        SeenScreen.passes(lead, "records-phone");
        lead.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        SeenScreen.passes(lead, "records-phone-dark");
        lead.getByLabel("To erase, type").fill(lead.getByText("To erase, type").innerText().replaceAll(".*: ", ""));
        press(lead, "Erase for good");
        assertThat(lead.getByRole(AriaRole.ALERT)).containsText("All records on the child are erased");
        assertThat(lead.getByLabel("Open: Freya")).hasCount(0);
        lead.getByText("How long records are kept, and what is over").click();
        lead.getByLabel("Months: Looks and checks").fill("12");
        press(lead, "Keep so: Looks and checks");
        assertThat(lead.getByText("Kept for 12 months after the last day: Looks and checks.")).isVisible();
        SeenScreen.passes(lead, "retention-phone-dark");
        lead.setViewportSize(820, 1180);
        lead.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
        SeenScreen.passes(lead, "retention");
    }

    private static void opens(Page page, String name) {
        ByTheBar.open(page, "Class", "Records");
        page.locator("summary").filter(new Locator.FilterOptions().setHasText("Children of now")).click();
        page.getByLabel("Open: " + name).first().click();
    }
}
