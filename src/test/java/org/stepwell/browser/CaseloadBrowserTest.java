package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import org.junit.jupiter.api.Test;

/** A child is shared, seen, written about, and closed again while its page is open. */
class CaseloadBrowserTest extends InRealBrowser {
    @Test
    void aSharedChildIsSeenAndClosesWithItsPageOpen() {
        Page teacher = browser.signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        ByTheBar.open(teacher, "Week", "Caseload");
        assertThat(teacher.getByText("Amadou with Nkechi Dunmore")).isVisible();
        press(teacher, "Freya");
        fill(teacher, "Why", "extra help with teens");
        press(teacher, "Share");
        assertThat(teacher.getByRole(AriaRole.ALERT)).containsText("1 child is shared now");
        SeenScreen.passes(teacher, "caseload-teacher");

        Page specialist = browser.signedIn("specialist@sample", 1180, 820, ColorScheme.LIGHT);
        ByTheBar.open(specialist, "Week", "Caseload");
        Locator card = specialist.locator(".cards > .sheet").filter(new Locator.FilterOptions().setHasText("Freya"));
        assertThat(card).containsText("extra help with teens");
        SeenScreen.passes(specialist, "caseload-specialist");
        card.getByText("Between the adults").click();
        card.getByLabel("Your words").fill("Two short sessions with sticks went well.");
        card.getByLabel("Your words").blur();
        card.getByText("Add", new Locator.GetByTextOptions().setExact(true)).click();
        assertThat(card).containsText("Two short sessions with sticks went well.");
        specialist.setViewportSize(390, 844);
        SeenScreen.passes(specialist, "caseload-phone");
        specialist.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        SeenScreen.passes(specialist, "caseload-phone-dark");
        specialist.setViewportSize(1180, 820);
        logsALook(specialist);
        opens(specialist, teacher);
    }

    /** A Table of their own: the shared children of that class, and nobody else. */
    private static void logsALook(Page specialist) {
        specialist.getByText("To the Table: Room 6").click();
        assertThat(specialist.locator("#setup .roster .card")).hasCount(5);
        specialist.locator("#setup .card").filter(new Locator.FilterOptions().setHasText("Freya")).click();
        specialist.locator("[data-key='start']").click();
        specialist.locator("#phrases [data-key^='cell-']").first().click();
        assertThat(specialist.locator("#last .state")).containsText("Saved on this tablet");
        specialist.waitForResponse("**/api/observations", () -> specialist.locator("[data-key='home']").click());
        specialist.waitForURL(browser.server().address() + "/");
    }

    private static void opens(Page specialist, Page teacher) {
        specialist.navigate(browser.server().address() + "/caseload");
        specialist.getByText("Freya").first().click();
        assertThat(specialist.locator(".looks li").first()).containsText("Nkechi Dunmore");
        assertThat(specialist.getByText("Two short sessions with sticks went well.")).isVisible();
        String page = specialist.url();
        teacher.navigate(page);
        assertThat(teacher.locator(".looks li").first()).containsText("Nkechi Dunmore");
        assertThat(teacher.getByText("Two short sessions with sticks went well.")).isVisible();
        ByTheBar.open(teacher, "Week", "Caseload");
        press(teacher, "End now: Freya, Nkechi Dunmore");
        assertThat(teacher.getByRole(AriaRole.ALERT)).containsText("Ended.");
        specialist.getByLabel("Skill").first().selectOption(new com.microsoft.playwright.options.SelectOption().setIndex(1));
        assertThat(specialist.getByText("Two short sessions with sticks went well.")).hasCount(0);
        specialist.navigate(page);
        assertThat(specialist.getByText("Freya")).hasCount(0);
        specialist.context().close();
        teacher.context().close();
    }
}
