package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.stepwell.table.FaultyDay.TEACHER;

import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import java.nio.file.Path;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stepwell.table.Fault.Kind;

/** What may befall the tablet itself: its browser, its storage, a new version of the page. */
class TabletFaultsBrowserTest extends OnAFaultyDay {
    @TempDir
    private Path folder;

    private Tablet window() {
        Tablet tablet = Tablet.inWindow(day.browser(), day.proxy().address(), promises);
        tablet.signIn(TEACHER);
        tablet.openVisit();
        return tablet;
    }

    private Tablet onTablet() {
        return Tablet.withStorage(day.playwright(), folder, day.proxy().address(), promises);
    }

    @Test
    void opensWithoutNetworkAfterTheBrowserStartedAgain() {
        Tablet tablet = onTablet();
        tablet.signIn(TEACHER);
        tablet.openVisit();
        tablet.untilKeptForOffline();
        day.proxy().goAway();
        tablet.save("q0603", 3);
        tablet.close();
        tablet = onTablet();
        tablet.as(TEACHER);
        tablet.openVisit();
        assertThat(tablet.page().locator("#notices")).containsText("Opened from this tablet");
        assertThat(tablet.waiting()).isEqualTo(1);
        tablet.save("q0607", 4);
        assertThat(tablet.waiting()).isEqualTo(2);
        day.proxy().heal();
        tablet.signIn(TEACHER);
        endsWell(tablet);
    }

    private static void newVersion() {
        UnaryOperator<String> newer = text -> text.replace("</main>", "<p id=\"newer\">newer</p></main>");
        day.proxy().change("/table/", newer);
    }

    @Test
    void aNewVersionIsTakenBetweenVisitsAndCarriesTheLooksOver() {
        Tablet tablet = window();
        tablet.untilKeptForOffline();
        newVersion();
        day.proxy().meet(Fault.of(Kind.STATUS_503), Integer.MAX_VALUE);
        tablet.save("q0603", 3);
        tablet.openVisit();
        tablet.save("q0607", 4);
        tablet.openVisit();
        assertThat(tablet.page().locator("#newer")).hasCount(0);
        tablet.endVisit();
        tablet.openUntil(() -> tablet.page().locator("#newer").count() == 1);
        assertThat(tablet.waiting()).isEqualTo(2);
        endsWell(tablet);
    }

    @Test
    void aNewVersionThatArrivesInPartIsNotTaken() {
        Tablet tablet = window();
        tablet.untilKeptForOffline();
        day.proxy().meet(Fault.of(Kind.TRUNCATED), Integer.MAX_VALUE, "GET /table/js/visit.js");
        newVersion();
        tablet.endVisit();
        tablet.openUntil(() -> day.proxy().met() > 0);
        day.proxy().goAway();
        tablet.openVisit();
        assertThat(tablet.page().locator("#newer")).hasCount(0);
        tablet.save("q0603", 3);
        endsWell(tablet);
    }

    @Test
    void aFullTabletSaysThatItDidNotSave() {
        Tablet tablet = Tablet.inWindow(day.browser(), day.proxy().address(), promises);
        tablet.signIn(TEACHER);
        CDPSession devtools = tablet.context().newCDPSession(tablet.page());
        quota(devtools, 1.0);
        tablet.openVisit();
        String token = tablet.tap("q0607", 4);
        assertThat(tablet.page().locator("#last .state")).containsText("NOT saved");
        assertThat(tablet.page().locator("#last .state")).containsText(token);
        assertThat(promises.calledSaved(token)).isFalse();
        quota(devtools, null);
        tablet.save("q0615", 4);
        endsWell(tablet);
        assertThat(stored()).hasSize(1);
    }

    private static void quota(CDPSession devtools, Double bytes) {
        JsonObject arguments = new JsonObject();
        arguments.addProperty("origin", day.proxy().address());
        if (bytes != null) {
            arguments.addProperty("quotaSize", bytes);
        }
        devtools.send("Storage.overrideQuotaForOrigin", arguments);
    }

    @Test
    void aBrowserThatKeepsNothingSaysSoAndPromisesNothing() {
        try (Tablet tablet = Tablet.inWindow(day.browser(), day.proxy().address(), promises)) {
            tablet.context().addInitScript("Object.defineProperty(window, 'indexedDB', { value: {"
                    + " open() { throw new DOMException('denied', 'SecurityError'); } } })");
            tablet.signIn(TEACHER);
            tablet.openVisit();
            assertThat(tablet.page().locator("#count")).containsText("keeps nothing");
            tablet.tap("q0603", 3);
            assertThat(tablet.page().locator("#last .state")).containsText("NOT saved");
            assertThat(promises.savedCount()).isZero();
        }
    }

    @Test
    void aPrivateWindowSaysThatItMayForget() {
        Tablet tablet = window();
        tablet.save("q0603", 3);
        tablet.endVisit();
        assertThat(tablet.page().locator("#notices")).containsText("may clear its storage");
        tablet.key("start").click();
        tablet.save("q0607", 3);
        endsWell(tablet);
    }

    @Test
    void aSlowLineThatDropsRequestsDelaysNothingAtTheTable() {
        Tablet tablet = window();
        CDPSession devtools = tablet.context().newCDPSession(tablet.page());
        devtools.send("Network.enable");
        JsonObject slow = new JsonObject();
        slow.addProperty("offline", false);
        slow.addProperty("latency", 400);
        slow.addProperty("downloadThroughput", 50_000);
        slow.addProperty("uploadThroughput", 50_000);
        devtools.send("Network.emulateNetworkConditions", slow);
        day.proxy().meet(Fault.of(Kind.TRUNCATED, 0.9), 1);
        for (int look = 0; look < 5; look++) {
            String token = tablet.save(Tablet.CHILDREN.get(look % 4), 1 + look);
            assertThat(promises.calledSaved(token)).isTrue();
            tablet.putDown();
        }
        endsWell(tablet);
    }
}
