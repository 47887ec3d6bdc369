package org.stepwell.browser;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;

/** A test with a program and a browser of its own, and what hands do in it. */
abstract class InRealBrowser {
    static RealBrowser browser;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
        PlaywrightAssertions.setDefaultAssertionTimeout(30_000);
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    static void press(Page page, String words) {
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(words).setExact(true)).first().click();
    }

    /** Writes into a field and leaves it, as the screens hear a field only then. */
    static void fill(Page page, String label, String value) {
        Locator field = page.getByLabel(label, new Page.GetByLabelOptions().setExact(true));
        field.fill(value);
        field.blur();
    }
}
