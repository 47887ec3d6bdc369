package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.table.FaultyServer.Fault;

/** What lies on a tablet tells nothing without its key, and leaves only under the adult who made it. */
class SealBrowserTest {
    private static final List<String> TELLING = List.of("Itzel", "Tane", "Sof\u00eda", "\"k1\"", "\"k5\"", "made_ten",
            "wrote_it", "\"T05\"", "teacher@test", "Wanted");
    private FaultyServer server;
    private TablePage tablet;

    @BeforeEach
    void opensATablet() throws IOException {
        server = new FaultyServer();
        tablet = new TablePage(server.address()).open();
    }

    @AfterEach
    void closes() {
        tablet.close();
        server.close();
    }

    private void logsTwoThatWait() {
        tablet.equipped();
        tablet.key("seat-k5").click();
        tablet.seat("k1");
        server.meet(503);
        tablet.log("made_ten", "k1");
        tablet.key("note").fill("Wanted to do it again.");
        tablet.key("add-note").click();
        tablet.log("wrote_it", "k5");
        assertThat(tablet.count()).containsText("2 on this tablet");
    }

    @Test
    void whatLiesOnTheTabletIsSealedUnderAKeyThatNoScriptCanRead() {
        logsTwoThatWait();
        String disk = tablet.onDisk();
        assertThat(disk).contains("outbox/1", "outbox/2", "page/class", "extractable=false").doesNotContain(TELLING);
        server.meet(Fault.NONE);
        tablet.putDown();
        tablet.until(() -> server.kept().size() == 2);
        assertThat(server.kept()).extracting(l -> l.get("child").asString()).containsExactly("k1", "k5");
    }

    @Test
    void afterSignOutOnlyCiphertextIsLeftAndStillGoesOutUnderItsMaker() {
        logsTwoThatWait();
        tablet.key("sign-out").click();
        assertThat(tablet.page.locator("#gate")).containsText("Signed out");
        assertThat(tablet.page.locator("#gate")).containsText("2 looks wait");
        String disk = tablet.onDisk();
        assertThat(disk).contains("outbox/2").doesNotContain(TELLING)
                .doesNotContain("extractable", "page/class", "page/visit");
        assertThat(tablet.page.locator("body").innerText()).doesNotContain("Itzel");
        server.meet(Fault.NONE);
        tablet.online();
        tablet.until(() -> server.kept().size() == 2);
        assertThat(server.kept()).extracting(l -> l.get("child").asString()).containsExactly("k1", "k5");
        assertThat(server.keptBy()).containsOnly("teacher@test");
    }

    @Test
    void anEndedPassLeavesSealedEntriesForTheNextSignInOfTheirMaker() {
        logsTwoThatWait();
        tablet.key("sign-out").click();
        assertThat(tablet.page.locator("#gate")).containsText("2 looks wait");
        server.endPasses();
        server.meet(Fault.NONE);
        tablet.page.waitForResponse("**/api/observations", tablet::online);
        server.signInAgain();
        server.signIn("aide@test");
        tablet.open();
        assertThat(tablet.count()).containsText("All on the server · 2 of another adult");
        tablet.key("outbox").click();
        assertThat(tablet.page.locator("dialog")).not().containsText("made_ten");
        assertThat(tablet.page.locator("dialog [data-key='file']")).hasCount(0);
        assertThat(server.kept()).isEmpty();
        server.signIn("teacher@test");
        tablet.open();
        tablet.until(() -> server.kept().size() == 2);
        assertThat(server.keptBy()).containsOnly("teacher@test");
        assertThat(tablet.count()).containsText("All on the server");
    }

    @Test
    void aSessionThatEndedDoesNotStrandALook() {
        logsTwoThatWait();
        server.endSession();
        server.meet(Fault.NONE);
        tablet.putDown();
        tablet.until(() -> server.kept().size() == 2);
        assertThat(tablet.count()).containsText("All on the server");
        assertThat(tablet.page.locator("#notices")).not().containsText("sign-in has ended");
    }

    @Test
    void aClassThatWasTakenAwayLeavesTheTabletAtTheNextOpeningAndLooksThatWaitGoToTheServer() {
        logsTwoThatWait();
        assertThat(tablet.onDisk()).contains("page/class", "page/visit:");
        server.takeClassAway();
        tablet.open();
        assertThat(tablet.page.locator("#gate")).isVisible();
        tablet.until(() -> !tablet.onDisk().contains("page/class") && !tablet.onDisk().contains("page/visit:"));
        tablet.page.evaluate("() => navigator.serviceWorker.ready.then(() => true)");
        tablet.context.setOffline(true);
        tablet.page.reload();
        assertThat(tablet.page.locator("#gate")).isVisible();
        assertThat(tablet.page.locator("body").innerText()).doesNotContain("Itzel");
        tablet.context.setOffline(false);
        server.meet(Fault.NONE);
        tablet.open();
        tablet.until(() -> server.kept().size() == 2);
    }

    @Test
    void theServerIsToldOfASignOutThatWasMadeWithoutNetwork() {
        tablet.equipped();
        tablet.page.evaluate("() => navigator.serviceWorker.ready.then(() => true)");
        tablet.context.setOffline(true);
        tablet.key("sign-out").click();
        assertThat(tablet.page.locator("#gate")).containsText("Signed out");
        tablet.page.reload();
        assertThat(tablet.page.locator("#gate")).isVisible();
        assertThat(tablet.page.locator("body").innerText()).doesNotContain("Itzel");
        assertThat(server.hasSession()).isTrue();
        tablet.context.setOffline(false);
        tablet.page.reload();
        assertThat(tablet.page.locator("#gate")).isVisible();
        tablet.until(() -> !server.hasSession());
    }

    @Test
    void theFirstVersionsEntriesAreCarriedOverSealedAndDeliveredOnce() {
        tablet.page.navigate(server.address() + "/table/icon.svg");
        tablet.page.evaluate("""
                async () => {
                  await new Promise((done) => { indexedDB.deleteDatabase('stepwell-table').onsuccess = done; });
                  const open = indexedDB.open('stepwell-table', 1);
                  open.onupgradeneeded = () => {
                    open.result.createObjectStore('outbox', { keyPath: 'seq', autoIncrement: true })
                      .createIndex('id', 'id', { unique: true });
                    open.result.createObjectStore('page');
                  };
                  const db = await new Promise((done) => { open.onsuccess = () => done(open.result); });
                  const tx = db.transaction(['outbox', 'page'], 'readwrite');
                  const entry = (n, owner, child, sentAt, state) => tx.objectStore('outbox').add({
                    id: `018f0000-0000-7000-8000-00000000000${n}`, owner, at: Date.now() - 60000, heldUntil: 0, sentAt,
                    state, reason: state === 'refused' ? 'no child "k1"' : null,
                    record: { id: `018f0000-0000-7000-8000-00000000000${n}`, observed_at: '2026-03-02T09:14:03.120-06:00',
                      child, skill: 'T05', task: '16', step: 3, help: 'none', kind: 'table', tags: ['made_ten'],
                      note: null, clock_offset_ms: 12 } });
                  entry(1, 'teacher@test', 'k1', null, 'waiting');
                  entry(2, 'teacher@test', 'k5', 5, 'waiting');
                  entry(3, 'teacher@test', 'k1', 6, 'refused');
                  entry(4, 'aide@test', 'k5', null, 'waiting');
                  tx.objectStore('page').put({ table: { children: [{ child: 'k1', label: 'Itzel' }] }, at: 1 }, 'class');
                  await new Promise((done) => { tx.oncomplete = done; });
                  db.close();
                }""");
        server.meet(503);
        tablet.open();
        assertThat(tablet.count()).containsText("2 on this tablet");
        assertThat(tablet.count()).containsText("1 not taken · 1 of another adult");
        tablet.equipped();
        tablet.until(() -> tablet.onDisk().lines().filter(l -> l.startsWith("outbox/") && l.contains("\"box\"")).count() == 3);
        assertThat(tablet.onDisk().lines().filter(l -> !l.startsWith("outbox/4")).toList().toString())
                .doesNotContain(TELLING);
        server.meet(Fault.NONE);
        tablet.online();
        tablet.until(() -> server.kept().size() == 2);
        assertThat(server.kept()).extracting(l -> l.get("child").asString()).containsExactly("k1", "k5");
        tablet.key("outbox").click();
        assertThat(tablet.page.locator("dialog .reason")).containsText("no child \"k1\"");
        tablet.key("again").click();
        tablet.until(() -> server.kept().size() == 3);
        server.signIn("aide@test");
        tablet.open();
        tablet.until(() -> server.kept().size() == 4);
        assertThat(server.keptBy()).containsExactly("teacher@test", "teacher@test", "teacher@test", "aide@test");
    }

    @Test
    void anInsecureAddressSaysSoAndKeepsAndSendsAllTheSame() {
        TablePage plain = new TablePage(server.address());
        try (plain) {
            plain.page.addInitScript("Object.defineProperty(window, 'isSecureContext', {value: false});"
                    + "Object.defineProperty(crypto, 'subtle', {value: undefined});"
                    + "Object.defineProperty(navigator, 'locks', {value: undefined});"
                    + "Object.defineProperty(navigator, 'storage', {value: undefined});");
            plain.open();
            assertThat(plain.page.locator("#notices")).containsText("not encrypted");
            assertThat(plain.key("pin-choose")).hasCount(0);
            plain.seat("k1");
            server.meet(503);
            plain.log("made_ten", "k1");
            plain.page.reload();
            assertThat(plain.count()).containsText("1 on this tablet");
            assertThat(plain.onDisk()).doesNotContain("page/class");
            server.meet(Fault.NONE);
            plain.online();
            plain.putDown();
            plain.until(() -> server.kept().size() == 1);
        }
    }

    @Test
    void anOlderPageWithAVisitIsNotTornFromItsStore() {
        tablet.equipped();
        tablet.seat("k1");
        Page newer = tablet.context.newPage();
        newer.navigate(server.address() + "/table/icon.svg");
        newer.evaluate("() => { window.open3 = indexedDB.open('stepwell-table', 3);"
                + "open3.onsuccess = () => { window.taken = true; open3.result.close(); }; }");
        tablet.log("made_ten", "k1");
        assertThat(newer.evaluate("() => Boolean(window.taken)")).isEqualTo(false);
        tablet.key("end").click();
        newer.waitForFunction("() => window.taken");
        tablet.key("start").click();
        tablet.log("wrote_it", "k1");
        tablet.putDown();
        tablet.until(() -> server.kept().size() == 2);
    }
}
