package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A plan is begun from the child's page, a session logged by one tap, a missed one by two. */
class PlanBrowserTest {
    private static RealBrowser browser;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    @Test
    void aPlanIsBegunAndItsSessionsLogged() {
        Page page = browser.signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        page.navigate(browser.server().address() + "/suggestions");
        page.navigate(browser.server().address() + "/" + page.locator("a",
                new Page.LocatorOptions().setHasText("Marisol")).first().getAttribute("href"));
        page.getByText("Plan of help or deeper work").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Plan: Marisol")).waitFor();
        SeenScreen.passes(page, "plan-new");
        page.getByLabel("Sessions a week").fill("99");
        page.getByLabel("Sessions a week").blur();
        page.getByText("Begin the plan").click();
        assertThat(page.getByText("Please mend: Sessions a week.")).isVisible();
        page.getByLabel("Sessions a week").fill("4");
        page.getByLabel("Sessions a week").blur();
        page.getByText("Begin the plan").click();
        page.getByText("Given today").click();
        assertThat(page.getByText("Sessions (1)")).isVisible();
        page.getByText("Missed today").click();
        page.locator("button", new Page.LocatorOptions().setHasText("school event")).click();
        assertThat(page.getByText("Sessions (2)")).isVisible();
        SeenScreen.passes(page, "plan-running");
        String plan = page.url();
        aTemplateIsKeptAndTheNextPlanBegunFromIt(page);
        page.navigate(browser.server().address() + "/");
        assertThat(page.getByText("Extra help has begun, and no letter to the family was approved yet.")).isVisible();
        page.locator("a.chip[href^='letter/']").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Letter about extra help: Marisol")).waitFor();
        SeenScreen.passes(page, "letter-portrait");
        page.getByText("Approve", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByText("Approved. The PDF")).isVisible();
        assertThat(page.getByText("Approved on ")).isVisible();
        page.navigate(browser.server().address() + "/");
        page.locator("main h1").waitFor();
        assertThat(page.locator("a.chip[href^='letter/']")).hasCount(0);
        page.navigate(plan);
        page.getByText("Letter to the family").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Letter about")).waitFor();
        page.getByText("Español", new Page.GetByTextOptions().setExact(true)).last().click();
        assertThat(page.getByLabel("The letter, one sentence a line")).hasAttribute("lang", "es");
        page.setViewportSize(390, 844);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        SeenScreen.passes(page, "letter-phone-dark");
        page.navigate(plan);
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Plan: Marisol")).waitFor();
        page.setViewportSize(390, 844);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        SeenScreen.passes(page, "plan-phone-dark");
        page.locator("h1 a").click();
        assertThat(page.locator("svg").first()).isVisible();
        SeenScreen.passes(page, "child-with-goal-phone-dark");
    }

    private static void aTemplateIsKeptAndTheNextPlanBegunFromIt(Page page) {
        page.getByText("Keep this plan as a template of the school").click();
        page.getByLabel("Name of the template").fill("Tens by frames");
        page.getByLabel("Name of the template").blur();
        page.getByLabel("Given by (role, such as aide; no name)").fill("aide");
        page.getByLabel("Given by (role, such as aide; no name)").blur();
        page.getByText("Keep as a template", new Page.GetByTextOptions().setExact(true)).click();
        assertThat(page.getByText("The school has the template \"Tens by frames\".")).isVisible();
        page.navigate(browser.server().address() + "/class-map");
        page.navigate(browser.server().address() + "/" + page.locator("main a[href^='child/']",
                new Page.LocatorOptions().setHasText("Zainab")).first().getAttribute("href").replace("child/", "plan/"));
        page.getByLabel("Begin from a template of the school").selectOption("Tens by frames");
        assertThat(page.getByText("The template says: given by aide.")).isVisible();
        page.getByText("Templates of the school (1)").click();
        SeenScreen.passes(page, "plan-from-template");
    }
}
