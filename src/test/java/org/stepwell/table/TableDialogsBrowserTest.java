package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Everything the Table lays over itself, upright and across, on a phone and at 400 % (1280 by 1024 shows 320 by 256 then,
 * WCAG 2.2 1.4.10), light and dark: nothing for axe to find, nothing out of reach, all of it by keyboard.
 */
class TableDialogsBrowserTest {
    private static final Map<String, int[]> SIZES = Map.of("upright", new int[] {820, 1180}, "across",
            new int[] {1180, 820}, "phone", new int[] {390, 844}, "zoomed", new int[] {320, 256});
    private static final String OUT_OF_REACH = """
            () => {
              const box = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document.documentElement;
              const wrong = [];
              if (document.documentElement.scrollWidth > innerWidth) { wrong.push('the page is wider than the window'); }
              if (box.scrollWidth > box.clientWidth) { wrong.push('the dialog is wider than itself'); }
              for (const e of box.querySelectorAll('button, input, select, a, summary')) {
                if (!e.checkVisibility()) { continue; } // what lies folded away
                e.scrollIntoView({ block: 'nearest' });
                const { top, bottom, left, right, width, height } = e.getBoundingClientRect();
                if (width > 0 && (left < 0 || right > innerWidth || bottom - top < innerHeight && (top < -1 || bottom > innerHeight + 1))) {
                  wrong.push(`${e.dataset.key} cannot be brought into sight`);
                }
                if (width > 0 && (width < 48 || height < 48)) { wrong.push(`${e.dataset.key} is ${width} by ${height}`); }
              }
              box.scrollTo(0, 0);
              return wrong.join(', ');
            }""";
    private FaultyServer server;
    private TablePage tablet;

    @BeforeEach
    void opensATablet() throws IOException {
        server = new FaultyServer();
        tablet = new TablePage(server.address());
        tablet.page.clock().install();
        tablet.open();
        tablet.equipped();
    }

    @AfterEach
    void closes() {
        tablet.close();
        server.close();
    }

    private void passes(String state) {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            tablet.page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            SIZES.forEach((name, size) -> {
                tablet.page.setViewportSize(size[0], size[1]);
                String where = "table-" + state + "-" + name + "-" + scheme.name().toLowerCase(java.util.Locale.ROOT);
                assertThat(tablet.page.evaluate(OUT_OF_REACH)).as(where).isEqualTo("");
                tablet.page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/" + where + ".png")));
            });
            assertThat(new AxeBuilder(tablet.page)
                    .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze().getViolations()
                    .stream().map(rule -> rule.getId() + " " + rule.getNodes().getFirst().getHtml()).toList())
                    .as(state + " " + scheme).isEmpty();
        }
        tablet.page.setViewportSize(820, 1180);
    }

    /** Presses a key on the button that would be tapped. */
    private void press(String key) {
        tablet.key(key).focus();
        tablet.page.keyboard().press("Enter");
    }

    private String focus() {
        return tablet.page.evaluate("() => document.activeElement?.dataset.key ?? ''").toString();
    }

    private void choosePinByKeyboard(String pin) {
        press("pin-choose");
        assertThat(focus()).isEqualTo("pin-new");
        tablet.page.keyboard().type(pin);
        tablet.page.keyboard().press("Tab");
        tablet.page.keyboard().type(pin);
        tablet.page.keyboard().press("Enter");
        assertThat(tablet.page.locator("dialog")).hasCount(0);
        assertThat(focus()).isEqualTo("pin-choose");
    }

    @Test
    void theChoiceOfAPin() {
        press("pin-choose");
        assertThat(tablet.page.locator("dialog.pin")).isVisible();
        passes("pin-choose");
        tablet.page.keyboard().press("Escape");
        assertThat(tablet.page.locator("dialog")).hasCount(0);
        assertThat(focus()).isEqualTo("pin-choose");
    }

    @Test
    void theCoverAndThePin() {
        choosePinByKeyboard("471108");
        tablet.page.clock().fastForward("01:05");
        assertThat(tablet.key("uncover")).isVisible();
        passes("cover");
        tablet.page.keyboard().press("Enter");
        assertThat(tablet.page.locator("dialog")).hasCount(0);
        tablet.page.clock().fastForward("05:10");
        tablet.page.keyboard().press("Enter");
        assertThat(tablet.key("pin")).isVisible();
        assertThat(focus()).isEqualTo("pin");
        tablet.page.keyboard().type("111111");
        tablet.page.keyboard().press("Enter");
        assertThat(tablet.key("pin-said")).containsText("4 more tries");
        passes("pin");
        tablet.key("pin").focus();
        tablet.page.keyboard().type("471108");
        tablet.page.keyboard().press("Enter");
        assertThat(tablet.page.locator("dialog")).hasCount(0);
        assertThat(tablet.key("seat-k1")).isVisible();
    }

    /** Nothing to ask is read before the tap; a number tried gives way to the next, also after a reload. */
    @Test
    void oneQuestionToAskAChildNow() {
        List.of("seat-k1", "seat-k2", "seat-k5", "start").forEach(key -> tablet.key(key).click());
        assertThat(tablet.key("ask-k1")).hasCount(0);
        assertThat(tablet.page.locator("body")).not().containsText("how many more");
        tablet.key("again").click();
        assertThat(tablet.key("again-k2-T02")).hasText("Oleksandr: How many, count out");
        passes("ask");
        tablet.key("again").click();
        press("ask-k2");
        assertThat(tablet.page.locator(".ask-card")).containsText("Nothing out: ten and how many more?");
        assertThat(tablet.page.locator(".ask-card .big")).hasText("17");
        passes("ask-card");
        press("show-ask");
        assertThat(tablet.page.locator("#number-card-text")).hasText("17");
        tablet.page.keyboard().press("Escape");
        tablet.log("made_ten", "k2");
        tablet.page.reload();
        press("ask-k2");
        assertThat(tablet.page.locator(".ask-card .big")).hasText("14");
        press("use");
        assertThat(tablet.key("task")).hasValue("14");
        press("ask-k5");
        assertThat(tablet.page.locator(".ask-card")).containsText("Build this number");
        assertThat(tablet.key("use")).hasCount(0);
        tablet.page.keyboard().press("Escape");
        tablet.key("child-k2").click();
        press("next");
        assertThat(tablet.key("task")).hasValue("16");
        tablet.key("again").click();
        press("again-k2-T02");
        assertThat(tablet.key("skill")).hasValue("T02");
    }

    @Test
    void theChoiceOfInitials() {
        press("initials");
        assertThat(focus()).isEqualTo("initials-k1");
        passes("initials");
        tablet.key("initials-k1").fill("Zz");
        tablet.page.keyboard().press("Enter");
        assertThat(tablet.page.locator("dialog")).hasCount(0);
        assertThat(focus()).isEqualTo("initials");
    }

    @Test
    void whatWaitsAndWhatWasNotTaken() {
        server.refuse("k1");
        tablet.seat("k1");
        tablet.log("made_ten", "k1");
        tablet.putDown();
        assertThat(tablet.count()).containsText("1 not taken");
        press("outbox");
        assertThat(tablet.page.locator("dialog .reason")).isVisible();
        passes("outbox");
        tablet.page.keyboard().press("Escape");
        assertThat(tablet.page.locator("dialog")).hasCount(0);
        assertThat(focus()).isEqualTo("outbox");
    }

    @Test
    void theStopAndTheNumberCard() {
        tablet.seat("k1");
        press("stop");
        passes("stopped");
        tablet.page.keyboard().press("Enter");
        assertThat(tablet.page.locator("dialog")).hasCount(0);
        press("show");
        assertThat(tablet.page.locator("dialog")).isVisible();
        passes("number");
        tablet.page.keyboard().press("Escape");
        assertThat(tablet.page.locator("dialog")).hasCount(0);
    }

    @Test
    void theChoiceOfWhoSitsHereAndTheVisit() {
        passes("setup");
        tablet.seat("k3");
        tablet.log("made_ten", "k3");
        passes("visit");
        tablet.page.locator("#last summary").first().click();
        passes("visit-more");
        server.meet(401);
        tablet.open();
        assertThat(tablet.page.locator("#gate")).isVisible();
        passes("gate");
    }
}
