package org.stepwell.browser;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;

/** The way to a screen as a reader goes it: the group on the bar, then the screen in it. */
final class ByTheBar {
    private ByTheBar() {
    }

    /** Opens a screen by the words of the bar; a group of one screen leads there by itself. */
    static void open(Page page, String group, String screen) {
        Locator groups = page.locator("header nav .bar-groups");
        groups.getByText(group, new Locator.GetByTextOptions().setExact(true)).click();
        groups.locator("[aria-current]", new Locator.LocatorOptions().setHasText(group)).waitFor();
        Locator link = page.locator("header nav .bar-screens:not([hidden])").getByText(screen,
                new Locator.GetByTextOptions().setExact(true));
        if (link.count() > 0 && !"page".equals(link.getAttribute("aria-current"))) {
            link.click();
            // the bar and the screen change in one answer of the server
            link.and(page.locator("[aria-current=page]")).waitFor();
        }
    }
}
