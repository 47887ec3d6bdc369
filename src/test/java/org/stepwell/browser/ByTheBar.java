package org.stepwell.browser;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;

/** The way to a screen as a reader goes it: the group on the bar, then the screen in it. */
final class ByTheBar {
    private ByTheBar() {
    }

    /**
     * Opens a screen by the words of the bar. Each press is waited for, since a second one on its way would draw the
     * screen anew under the hand; what is open already is not pressed.
     */
    static void open(Page page, String group, String screen) {
        Locator top = page.locator("header nav .bar-groups").getByText(group,
                new Locator.GetByTextOptions().setExact(true));
        Locator link = page.locator("header nav .bar-screens:not([hidden])").getByText(screen,
                new Locator.GetByTextOptions().setExact(true));
        String here = top.getAttribute("aria-current");
        if (here == null) {
            top.click();
            top.and(page.locator("[aria-current]")).waitFor();
        } else if (link.count() == 0) {
            press(page, top);
        }
        if (link.count() > 0) {
            press(page, link);
        }
    }

    private static void press(Page page, Locator link) {
        if (!"page".equals(link.getAttribute("aria-current"))) {
            link.click();
            link.and(page.locator("[aria-current=page]")).waitFor();
        }
    }
}
