package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Groups are suggested, changed by keyboard and by dragging, saved, and changed for one day, in a real browser. */
class GroupsBrowserTest extends InRealBrowser {
    private static void passesAxeAndFits(Page page, String name) {
        List<String> found = new AxeBuilder(page)
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze()
                .getViolations().stream().map(rule -> rule.getId() + " " + rule.getNodes().getFirst().getHtml())
                .toList();
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/" + name + ".png"))
                .setFullPage(true));
        assertThat(found).as(name).isEmpty();
        assertThat(page.evaluate("document.documentElement.scrollWidth <= innerWidth")).as(name).isEqualTo(true);
    }

    private static Page opened(int width, int height, ColorScheme scheme) {
        Page page = browser.signedIn("teacher@sample", width, height, scheme);
        ByTheBar.open(page, "Block", "Groups");
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Groups")).waitFor();
        return page;
    }

    private static Locator group(Page page, int number) {
        return page.getByRole(AriaRole.GROUP, new Page.GetByRoleOptions().setName("Group " + number).setExact(true));
    }

    private static Locator child(Page page, int group, int place) {
        return group(page, group).locator(".board-child").nth(place);
    }

    private static Locator sitting(Page page, int group, String name) {
        return group(page, group).locator(".board-child", new Locator.LocatorOptions().setHasText(name));
    }

    /** With no groups saved yet, proposals are there when the screen opens. */
    private static void take(Page page) {
        page.getByText("Take this to the board").first().click();
        assertThat(page.getByText("On the board now. Nothing is saved yet.")).isVisible();
    }

    @Test
    void groupsAreSuggestedChangedByKeyboardAndDraggingAndSavedUntilTomorrow() {
        Page page = opened(1180, 820, ColorScheme.LIGHT);
        take(page);
        passesAxeAndFits(page, "groups-landscape");
        String one = child(page, 1, 0).innerText();
        String other = child(page, 3, 1).innerText();
        child(page, 1, 0).focus();
        page.keyboard().press("Enter");
        assertThat(child(page, 1, 0)).hasAttribute("aria-pressed", "true");
        assertThat(child(page, 1, 0)).isFocused();
        child(page, 3, 1).focus();
        page.keyboard().press("Space");
        assertThat(sitting(page, 3, one)).isVisible();
        assertThat(sitting(page, 1, other)).isVisible();
        assertThat(page.locator(".board-child:focus")).hasText(one);
        String dragged = child(page, 2, 0).innerText();
        child(page, 2, 0).dragTo(group(page, 5).locator("h3"));
        assertThat(sitting(page, 5, dragged)).isVisible();
        page.getByText("Save these groups").click();
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("Saved. These groups hold from");
        assertThat(page.getByText("Take this to the board")).hasCount(0);
        page.getByText("Suggest groups").click();
        page.getByText("Take this to the board").first().waitFor();
        page.getByText("Tomorrow's table").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Tomorrow's table")).waitFor();
        assertThat(sitting(page, 5, dragged)).isVisible();
        page.getByLabel(Pattern.compile("Number for them, Group 2")).fill("13, 30");
        String swapped = child(page, 1, 1).innerText();
        child(page, 1, 1).click();
        child(page, 2, 0).click();
        assertThat(sitting(page, 2, swapped)).isVisible();
        page.getByText(Pattern.compile("Save for ")).click();
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("Saved for");
        passesAxeAndFits(page, "tomorrow-landscape");
        assertThat(page.locator("main").innerText()).doesNotContainPattern("(?i)support|on level|extension|step");
        page.reload();
        assertThat(sitting(page, 2, swapped)).isVisible();
        assertThat(page.getByLabel(Pattern.compile("Number for them, Group 2"))).hasValue("13, 30");
        assertThat(page.request().get(page.evaluate("location.origin") + "/api/table").text()).contains("\"groups\":[{")
                .contains(dragged);
    }

    @Test
    void fitsEverySizeAndTheDark() {
        Page portrait = opened(820, 1180, ColorScheme.DARK);
        portrait.getByText("Suggest groups").click();
        portrait.getByText("Mixed, as in the first weeks").waitFor();
        portrait.getByText(Pattern.compile("^Wishes")).click();
        portrait.getByText("Why they sit here").first().click();
        passesAxeAndFits(portrait, "groups-portrait-dark");
        Page phone = opened(390, 844, ColorScheme.LIGHT);
        passesAxeAndFits(phone, "groups-phone");
        Page desktop = opened(1440, 900, ColorScheme.LIGHT);
        passesAxeAndFits(desktop, "groups-desktop");
    }
}
