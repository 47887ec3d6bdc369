package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.stepwell.table.FaultyDay.CO_TEACHER;
import static org.stepwell.table.FaultyDay.TEACHER;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.table.Fault.Kind;

/**
 * Each fault of a school day's network, server and session before the real program. After each, every look that the
 * screen called saved is in the store once, in order, under the right adult and day; and at no time does the screen
 * say more than what is true.
 */
class FaultMatrixBrowserTest extends OnAFaultyDay {
    private Tablet tablet;

    @BeforeEach
    void openTable() {
        tablet = Tablet.inWindow(day.browser(), day.proxy().address(), promises);
        tablet.signIn(TEACHER);
        tablet.openVisit();
    }

    @AfterEach
    void everythingSavedIsThereOnce() {
        day.proxy().heal();
        day.proxy().changeNothing();
        tablet.drain();
        saysNoMoreThanIsTrue(tablet);
        endsWell(tablet);
    }

    /** Every post meets the fault from now on; waits until one has. */
    private void sendInto(Fault fault) {
        sendInto(fault, Integer.MAX_VALUE);
    }

    private void sendInto(Fault fault, int posts) {
        day.proxy().heal();
        day.proxy().meet(fault, posts);
        tablet.putDown();
        tablet.until(() -> day.proxy().met() > 0);
    }

    private void healAndDrain() {
        day.proxy().heal();
        tablet.drain();
    }

    @Test
    void keepsWhatIsTappedWhileTheNetworkIsGone() {
        day.proxy().goAway();
        tablet.save("q0603", 3);
        tablet.save("q0607", 1);
        tablet.putDown();
        assertThat(tablet.page().locator("#notices")).containsText("No network");
        assertThat(tablet.waiting()).isEqualTo(2);
        saysNoMoreThanIsTrue(tablet);
        assertThat(stored().size()).isZero();
        day.proxy().heal();
        // Nobody touches the tablet: it finds the network again by itself.
        tablet.until(() -> tablet.waiting() == 0);
    }

    @Test
    void keepsALookThroughACutAtAnyByteOfRequestAndAnswer() {
        for (int cut = 0; cut < 8; cut++) {
            tablet.save(Tablet.CHILDREN.get(cut % 4), 1 + cut % 5);
            sendInto(Fault.of(Kind.CUT_DURING, cut / 8.0));
            saysNoMoreThanIsTrue(tablet);
            assertThat(stored().size()).as("nothing of a request that was cut").isEqualTo(cut);
            sendInto(Fault.of(Kind.TRUNCATED, cut / 8.0));
            saysNoMoreThanIsTrue(tablet);
            healAndDrain();
            assertThat(stored().size()).isEqualTo(cut + 1);
        }
    }

    @Test
    void doesNotDoubleALookWhoseAnswerWasLost() {
        String token = tablet.save("q0603", 3);
        sendInto(Fault.of(Kind.LOST_AFTER_COMMIT));
        assertThat(stored().size()).isEqualTo(1);
        assertThat(tablet.page().locator("#last .state")).containsText("Saved on this tablet");
        assertThat(tablet.waiting()).isEqualTo(1);
        assertThat(promises.calledSaved(token)).isTrue();
    }

    @Test
    void livesThroughTheDeathOfTheServerBetweenCommitAndAnswer() {
        tablet.save("q0603", 3);
        tablet.save("q0607", 4);
        sendInto(Fault.of(Kind.LOST_AFTER_COMMIT, day.server()::kill));
        assertThat(stored().size()).isEqualTo(2);
        tablet.save("q0615", 2);
        saysNoMoreThanIsTrue(tablet);
        day.proxy().heal();
        day.startServerAgain();
        tablet.signIn(TEACHER);
        tablet.drain();
        assertThat(stored().size()).isEqualTo(3);
    }

    @Test
    void livesThroughTheDeathOfTheServerBeforeItKeeps() {
        tablet.save("q0603", 3);
        sendInto(Fault.of(Kind.CUT_DURING, day.server()::kill));
        assertThat(stored().size()).isZero();
        saysNoMoreThanIsTrue(tablet);
        day.proxy().heal();
        day.startServerAgain();
        tablet.signIn(TEACHER);
        tablet.drain();
        assertThat(stored().size()).isEqualTo(1);
    }

    @Test
    void livesThroughARestartOfTheDatabaseInABurst() {
        for (int look = 0; look < 6; look++) {
            tablet.save(Tablet.CHILDREN.get(look % 4), 1 + look % 5);
            if (look == 2) {
                day.server().stopPostgresAtOnce();
            }
            tablet.putDown();
        }
        saysNoMoreThanIsTrue(tablet);
    }

    @Test
    void livesThroughTheDeathOfTheDatabaseInABurst() {
        tablet.save("q0603", 3);
        sendInto(Fault.of(Kind.CUT_BEFORE, day.server()::killPostgres));
        tablet.save("q0607", 4);
        tablet.putDown();
        saysNoMoreThanIsTrue(tablet);
    }

    @Test
    void keepsALookThroughEveryAnswerThatIsNotOne() {
        int expected = 0;
        for (Kind kind : List.of(Kind.STATUS_500, Kind.STATUS_503, Kind.STATUS_401, Kind.STATUS_403, Kind.PORTAL)) {
            tablet.save("q0603", 3);
            sendInto(Fault.of(kind));
            saysNoMoreThanIsTrue(tablet);
            assertThat(stored().size()).as(kind.name()).isEqualTo(expected);
            healAndDrain();
            expected++;
        }
    }

    @Test
    void sendsSmallerBatchesWhenTheyAreTooLargeAndShowsTheOneThatIsTooLargeAlone() {
        tablet.save("q0603", 3);
        tablet.save("q0607", 3);
        tablet.save("q0615", 3);
        sendInto(Fault.of(Kind.STATUS_413), 1);
        tablet.drain();
        tablet.save("q0618", 3);
        sendInto(Fault.of(Kind.STATUS_413), 1);
        assertThat(tablet.page().locator("#count")).containsText("1 not taken");
        assertThat(stored().size()).isEqualTo(3);
        tablet.key("outbox").click();
        tablet.key("again").click();
        tablet.until(() -> stored().size() == 4);
        tablet.until(() -> !tablet.countText().contains("not taken"));
    }

    @Test
    void givesUpOnAServerThatHangs() {
        tablet.page().clock().install();
        tablet.openVisit();
        tablet.save("q0603", 3);
        sendInto(Fault.of(Kind.HANG));
        tablet.save("q0607", 3);
        saysNoMoreThanIsTrue(tablet);
        tablet.page().clock().fastForward(25_000);
        assertThat(tablet.page().locator("#notices")).containsText("No network");
        assertThat(tablet.waiting()).isEqualTo(2);
        saysNoMoreThanIsTrue(tablet);
    }

    @Test
    void waitsForAnAnswerThatIsLate() {
        tablet.save("q0603", 3);
        sendInto(Fault.of(Kind.LATE));
        tablet.save("q0607", 3);
        assertThat(stored().size()).isEqualTo(1);
        assertThat(tablet.waiting()).as("not on the server before the server says so").isEqualTo(2);
    }

    @Test
    void losesNothingThatWasCalledSavedWhenTheTabIsClosed() {
        for (int times = 0; times < 5; times++) {
            tablet.tap("q0603", 3);
            tablet.tap("q0607", 1 + times);
            tablet.closeTab();
            tablet.openVisit();
            saysNoMoreThanIsTrue(tablet);
        }
        tablet.save("q0603", 5);
    }

    @Test
    void twoTabsSendEachLookOnce() {
        int before = day.proxy().posted().size();
        tablet.save("q0603", 3);
        var first = tablet.anotherTab();
        tablet.openVisit();
        tablet.save("q0607", 4);
        tablet.putDown();
        first.evaluate("() => window.dispatchEvent(new Event('online'))");
        tablet.until(() -> stored().size() == 2);
        tablet.until(() -> tablet.waiting() == 0);
        assertThat(first.locator("#count")).hasText("All on the server");
        assertThat(day.proxy().posted()).hasSize(before + 2);
        first.close();
    }

    @Test
    void opensAgainWithoutNetworkAfterAReload() {
        tablet.untilKeptForOffline();
        day.proxy().goAway();
        tablet.save("q0603", 3);
        tablet.openVisit();
        assertThat(tablet.page().locator("#notices")).containsText("Opened from this tablet");
        assertThat(tablet.waiting()).isEqualTo(1);
        tablet.save("q0607", 4);
        saysNoMoreThanIsTrue(tablet);
    }

    @Test
    void anAdultWhoseSignInEndedKeepsLogging() {
        tablet.untilKeptForOffline();
        day.proxy().goAway();
        tablet.save("q0603", 3);
        tablet.loseSession();
        tablet.save("q0607", 3);
        day.proxy().heal();
        tablet.putDown();
        tablet.wake();
        tablet.save("q0615", 3);
        saysNoMoreThanIsTrue(tablet);
        tablet.signIn(TEACHER);
    }

    @Test
    void anotherAdultOnTheTabletSendsOnlyTheirOwn() {
        day.proxy().goAway();
        tablet.save("q0603", 3);
        day.proxy().heal();
        tablet.signIn(CO_TEACHER);
        tablet.openVisit();
        assertThat(tablet.page().locator("#count")).containsText("1 of another adult");
        tablet.save("q0607", 2);
        tablet.putDown();
        tablet.until(() -> stored().size() > 0 && tablet.countText().startsWith("All on the server"));
        saysNoMoreThanIsTrue(tablet);
        tablet.signIn(TEACHER);
        tablet.openVisit();
    }

    @Test
    void twoTabletsOfOneAdultKeepTheirOwnLooks() {
        Promises second = new Promises();
        try (Tablet other = Tablet.inWindow(day.browser(), day.proxy().address(), second)) {
            other.signIn(TEACHER);
            other.openVisit();
            day.proxy().meet(Fault.of(Kind.LOST_AFTER_COMMIT), 2);
            tablet.save("q0603", 3);
            other.save("q0603", 3);
            tablet.putDown();
            other.putDown();
            tablet.until(() -> day.proxy().met() == 2);
            other.drain();
        }
        assertThat(second.against(day.store().markedWith(second.mark())).clean()).isTrue();
    }
}
