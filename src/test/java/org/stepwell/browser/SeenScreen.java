package org.stepwell.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.List;

/** What every screen must pass, and its picture for those who look. */
final class SeenScreen {
    private SeenScreen() {
    }

    /** Holds WCAG 2.2 AA as far as axe sees it and that nothing runs out to the side; keeps a picture. */
    static void passes(Page page, String name) {
        List<String> found = new AxeBuilder(page)
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze()
                .getViolations().stream().map(rule -> rule.getId() + " " + rule.getNodes().getFirst().getHtml())
                .toList();
        assertThat(found).as(name).isEmpty();
        assertThat(page.evaluate("document.documentElement.scrollWidth <= innerWidth")).as(name).isEqualTo(true);
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/" + name + ".png"))
                .setFullPage(true));
    }
}
