package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A tablet left alone covers itself, asks for the PIN, and gives a guesser five tries. */
class LockBrowserTest {
    private FaultyServer server;
    private TablePage tablet;
    private Locator cover;

    @BeforeEach
    void opensATablet() throws IOException {
        server = new FaultyServer();
        tablet = new TablePage(server.address());
        tablet.page.clock().install();
        tablet.open();
        tablet.equipped();
        cover = tablet.page.locator("dialog.cover");
    }

    @AfterEach
    void closes() {
        tablet.close();
        server.close();
    }

    private void choosePin(String pin) {
        tablet.key("pin-choose").click();
        tablet.key("pin-new").fill(pin);
        tablet.key("pin-again").fill(pin);
        tablet.key("pin-set").click();
        assertThat(tablet.page.locator("dialog.pin")).hasCount(0);
    }

    private void offer(String pin) {
        tablet.key("pin").fill(pin);
        tablet.key("pin-open").click();
    }

    @Test
    void aMinuteUntouchedCoversAndOneTapUncoversAndDoesNothingElse() {
        tablet.seat("k1");
        tablet.page.clock().fastForward("01:05");
        assertThat(cover).isVisible();
        tablet.page.mouse().click(400, 600);
        assertThat(cover).hasCount(0);
        assertThat(tablet.page.locator("#last .state")).containsText("Nothing logged");
        tablet.page.clock().fastForward("06:00");
        tablet.key("uncover").click();
        assertThat(cover).hasCount(0);
    }

    @Test
    void fiveMinutesUntouchedAskForThePinAlsoAfterAReload() {
        choosePin("471108");
        assertThat(tablet.onDisk()).doesNotContain("salt", "bits");
        tablet.page.clock().fastForward("05:10");
        tablet.key("uncover").click();
        tablet.page.keyboard().press("Escape");
        assertThat(tablet.key("pin")).isVisible();
        tablet.page.reload();
        assertThat(cover).isVisible();
        tablet.key("uncover").click();
        offer("471109");
        assertThat(cover).containsText("4 more tries");
        offer("471108");
        assertThat(cover).hasCount(0);
        assertThat(tablet.key("seat-k1")).isVisible();
    }

    @Test
    void wrongPinsWaitLongerAndTheFifthEndsTheSignIn() {
        choosePin("4711");
        tablet.page.clock().fastForward("05:10");
        tablet.key("uncover").click();
        offer("0000");
        assertThat(cover).containsText("4 more tries");
        offer("1111");
        assertThat(cover).containsText("3 more tries");
        offer("4711");
        assertThat(cover).containsText("Wait");
        tablet.page.clock().fastForward("00:03");
        offer("2222");
        assertThat(cover).containsText("2 more tries");
        tablet.page.clock().fastForward("00:06");
        offer("3333");
        assertThat(cover).containsText("One more try");
        tablet.page.clock().fastForward("00:16");
        offer("5555");
        assertThat(tablet.page.locator("#gate")).containsText("Five wrong PINs");
        assertThat(cover).hasCount(0);
        assertThat(tablet.page.locator("body").innerText()).doesNotContain("Itzel");
        assertThat(tablet.onDisk()).doesNotContain("extractable", "page/pin", "page/class");
        tablet.until(() -> !server.hasSession());
    }

    @Test
    void theShieldShowsInitialsOfTheTeachersChoiceEvenAfterSignOut() {
        tablet.key("initials").click();
        tablet.key("initials-k1").fill("Zz");
        tablet.key("keep").click();
        tablet.key("shield").click();
        assertThat(tablet.key("seat-k1")).containsText("Zz");
        tablet.key("sign-out").click();
        assertThat(tablet.page.locator("#gate")).isVisible();
        server.signInAgain();
        tablet.page.reload();
        tablet.equipped();
        tablet.page.waitForCondition(() -> {
            if (tablet.key("shield").getAttribute("aria-pressed").equals("false")) {
                tablet.key("shield").click();
            }
            return tablet.key("seat-k1").innerText().contains("Zz");
        }, new Page.WaitForConditionOptions().setTimeout(10000));
    }
}
