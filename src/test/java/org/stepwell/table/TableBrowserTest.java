package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.table.FaultyServer.Fault;
import tools.jackson.databind.JsonNode;

/** The page in Chromium against a server that fails on demand. */
class TableBrowserTest {
    private static final Pattern ON_TABLET = Pattern.compile("Saved on this tablet");
    private static final Pattern ON_SERVER = Pattern.compile("On the server");
    private static Playwright playwright;
    private static Browser browser;
    private final List<String> complaints = new ArrayList<>();
    private FaultyServer server;
    private BrowserContext context;
    private Page page;

    @BeforeAll
    static void openBrowser() {
        playwright = Playwright.create(new Playwright.CreateOptions()
                .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright.chromium().launch(new BrowserType.LaunchOptions()
                .setExecutablePath(Path.of("/usr/bin/chromium"))
                .setArgs(List.of("--no-sandbox", "--disable-gpu")));
    }

    @AfterAll
    static void closeBrowser() {
        playwright.close();
    }

    @BeforeEach
    void openPage() throws IOException {
        server = new FaultyServer();
        context = browser.newContext(new Browser.NewContextOptions().setViewportSize(820, 1180).setLocale("en-US")
                .setColorScheme(ColorScheme.LIGHT).setTimezoneId("America/Chicago"));
        context.setDefaultTimeout(15000);
        page = newPage();
    }

    @AfterEach
    void closePage() {
        context.close();
        server.close();
    }

    private Page newPage() {
        Page opened = context.newPage();
        opened.onPageError(complaints::add);
        opened.onConsoleMessage(m -> {
            if (m.text().contains("Content Security Policy") || m.text().contains("Trusted")) {
                complaints.add(m.text());
            }
        });
        opened.navigate(server.address() + "/table/");
        return opened;
    }

    private void seat(String... names) {
        for (String name : names) {
            key("seat-" + id(name)).click();
        }
        key("start").click();
    }

    private static String id(String name) {
        return Map.of("Itzel", "k1", "Oleksandr", "k2", "Sof\u00eda M.", "k3", "Sof\u00eda R.", "k4", "Tane", "k5",
                "Linh", "k6", "Kwabena", "k7", "Noor", "k8").get(name);
    }

    private Locator key(String key) {
        return page.locator("[data-key='" + key + "']");
    }

    private Locator state() {
        return page.locator("#last .state");
    }

    private void log(String phrase, String name) {
        key("cell-" + phrase + "-" + id(name)).click();
    }

    /** Ends the seconds for undoing the way a teacher does who puts the tablet down: the page is hidden. */
    private void sendAtOnce() {
        page.evaluate("() => { Object.defineProperty(document, 'visibilityState', {value: 'hidden', configurable: true});"
                + "document.dispatchEvent(new Event('visibilitychange')); delete document.visibilityState; }");
    }

    private void wake() {
        page.evaluate("() => window.dispatchEvent(new Event('online'))");
    }

    /** Waits until the page shows a state that the test needs. */
    private void until(Supplier<Boolean> true_) {
        page.waitForCondition(true_::get, new Page.WaitForConditionOptions().setTimeout(15000));
    }

    @Test
    void oneTapIsOneLookWithEverythingInHand() {
        seat("Itzel", "Sof\u00eda M.", "Sof\u00eda R.");
        key("next").click();
        key("cubes-yes").click();
        log("made_ten", "Sof\u00eda R.");
        assertThat(state()).containsText(ON_TABLET);
        sendAtOnce();
        until(() -> server.kept().size() == 1);
        JsonNode look = server.kept().getFirst();
        assertThat(look.get("child").asString()).isEqualTo("k4");
        assertThat(look.get("skill").asString()).isEqualTo("T05");
        assertThat(look.get("task").asString()).isEqualTo("16");
        assertThat(look.get("step").asInt()).isEqualTo(3);
        assertThat(look.get("help").asString()).isEqualTo("cubes");
        assertThat(look.get("tags").get(0).asString()).isEqualTo("made_ten");
        assertThat(look.get("id").asString()).matches("[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-.*");
        assertThat(look.get("observed_at").asString()).matches("\\d{4}-\\d\\d-\\d\\dT[\\d:.]+-0[56]:00");
        assertThat(state()).containsText(ON_SERVER);
        assertThat(complaints).isEmpty();
    }

    @Test
    void undoneWithinTheSecondsItNeverLeavesTheTablet() {
        seat("Itzel", "Tane");
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        key("undo").click();
        assertThat(state()).containsText("Taken back");
        log("wrote_it", "Tane");
        assertThat(state()).containsText("Tane");
        sendAtOnce();
        until(() -> server.kept().size() == 1);
        assertThat(server.kept().getFirst().get("child").asString()).isEqualTo("k5");
    }

    /** A page that is truly left ends what a hidden one would still finish, so the looks go out before it is. */
    @Test
    void looksTappedAMomentAgoAreSentBeforeTheOtherScreensOpen() {
        seat("Itzel", "Tane");
        log("made_ten", "Itzel");
        log("wrote_it", "Tane");
        assertThat(state()).containsText(ON_TABLET);
        key("home").click();
        page.waitForURL(server.address() + "/");
        assertThat(server.kept()).hasSize(2);
    }

    /** The ring means: not seen this week. What this tablet logged counts at once, also after a reload without network. */
    @Test
    void whoWasLookedAtLosesTheRingAndGetsItBackWhenTheLookIsTakenBack() {
        assertThat(key("seat-k5").locator(".ring")).hasCount(1);
        assertThat(key("seat-k1").locator(".ring")).hasCount(0);
        seat("Itzel", "Tane");
        log("made_ten", "Tane");
        assertThat(state()).containsText(ON_TABLET);
        key("end").click();
        assertThat(key("seat-k5").locator(".ring")).hasCount(0);
        page.reload();
        assertThat(key("seat-k5").locator(".ring")).hasCount(0);
        seat("Linh");
        log("made_ten", "Linh");
        assertThat(state()).containsText(ON_TABLET);
        key("undo").click();
        assertThat(state()).containsText("Taken back");
        key("end").click();
        assertThat(key("seat-k6").locator(".ring")).hasCount(1);
    }

    @Test
    void anotherScreenOpensWithoutNetworkToSendByAndTheLookStays() {
        seat("Itzel", "Tane");
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        page.route("**/api/**", route -> { });
        key("home").click();
        page.waitForURL(server.address() + "/");
        assertThat(server.kept()).isEmpty();
        page.unroute("**/api/**");
        page.navigate(server.address() + "/table/");
        until(() -> server.kept().size() == 1);
    }

    @Test
    void takenBackLaterIsASecondRecordThatNamesTheFirst() {
        seat("Itzel", "Tane");
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        sendAtOnce();
        assertThat(state()).containsText(ON_SERVER);
        key("undo").click();
        assertThat(state()).containsText("Taken back");
        sendAtOnce();
        until(() -> server.kept().size() == 2);
        JsonNode second = server.kept().get(1);
        assertThat(second.get("withdrawn").asBoolean()).isTrue();
        assertThat(second.get("replaces").asString()).isEqualTo(server.kept().getFirst().get("id").asString());
    }

    @Test
    void oneTapMovesALookToTheOtherSofia() {
        seat("Sof\u00eda M.", "Sof\u00eda R.");
        log("made_ten", "Sof\u00eda M.");
        assertThat(state()).containsText("Sof\u00eda M.");
        key("move-k4").click();
        assertThat(state()).containsText("Sof\u00eda R.");
        sendAtOnce();
        until(() -> server.kept().size() == 1);
        assertThat(server.kept().getFirst().get("child").asString()).isEqualTo("k4");
    }

    @Test
    void aSecondTapAddsHelpAndATag() {
        seat("Itzel");
        log("made_ten", "Itzel");
        key("more").click();
        key("as-prompt").click();
        key("tag-digits_swapped").click();
        assertThat(key("tag-digits_swapped")).hasAttribute("aria-pressed", "true");
        key("note").fill("Wanted to do it again.");
        key("add-note").click();
        sendAtOnce();
        until(() -> server.kept().size() == 1);
        JsonNode look = server.kept().getFirst();
        assertThat(look.get("help").asString()).isEqualTo("prompt");
        assertThat(look.get("tags").toString()).contains("made_ten", "digits_swapped");
        assertThat(look.get("note").asString()).isEqualTo("Wanted to do it again.");
    }

    @Test
    void aTapIsNotSwallowedByNewsThatArrivesUnderTheFinger() {
        seat("Itzel", "Tane");
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        key("cell-wrote_it-k5").hover();
        page.mouse().down();
        page.waitForResponse("**/api/observations", this::sendAtOnce);
        assertThat(server.kept()).hasSize(1);
        page.mouse().up();
        // The page was still sending what it had: the new look may go along at once.
        assertThat(state()).containsText(Pattern.compile("(Saved on this tablet|On the server) · Tane"));
    }

    @Test
    void aSecondTapRightAfterTheFirstIsNotSwallowedByItsNews() {
        page.clock().install();
        seat("Itzel", "Tane");
        log("made_ten", "Itzel");
        key("cell-wrote_it-k5").hover();
        page.mouse().down();
        assertThat(page.locator("#count")).containsText("1 on this tablet");
        page.clock().runFor(60);
        page.mouse().up();
        assertThat(state()).containsText("Saved on this tablet · Tane");
    }

    @Test
    void whatIsBeingTypedKeepsItsPlaceWhenNewsArrives() {
        seat("Itzel", "Tane");
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        key("note").fill("built it");
        key("note").press("Home");
        page.waitForResponse("**/api/observations", this::sendAtOnce);
        assertThat(state()).containsText(ON_SERVER);
        page.keyboard().type("She ");
        assertThat(key("note")).hasValue("She built it");
        key("task").selectText();
        wake();
        page.evaluate("() => document.querySelector('[data-key=language]').click()");
        page.keyboard().type("20");
        assertThat(key("task")).hasValue("20");
    }

    @Test
    void aWholeClassIsStampedPhraseFirst() {
        key("all").click();
        key("start").click();
        key("phrase-said_ten").click();
        key("child-k1").click();
        key("child-k2").click();
        key("child-k8").click();
        assertThat(state()).containsText("Saved on this tablet · Noor");
        sendAtOnce();
        until(() -> server.kept().size() == 3);
        assertThat(server.kept()).extracting(l -> l.get("child").asString()).containsExactly("k1", "k2", "k8");
        assertThat(server.kept()).extracting(l -> l.get("step").asInt()).containsOnly(4);
    }

    @Test
    void objectsThatBelongToTheTaskAreNoHelp() {
        seat("Itzel");
        key("skill").selectOption("T02");
        key("cubes-yes").click();
        log("counted_out", "Itzel");
        sendAtOnce();
        until(() -> server.kept().size() == 1);
        assertThat(server.kept().getFirst().get("help").asString()).isEqualTo("none");
    }

    @Test
    void anAnswerLostAfterKeepingLeavesOneLookAndNoFalseWord() {
        seat("Itzel", "Tane");
        server.meet(Fault.LOST_AFTER_KEEPING);
        log("made_ten", "Itzel");
        log("wrote_it", "Tane");
        sendAtOnce();
        until(() -> server.kept().size() == 2);
        assertThat(state()).containsText(ON_TABLET);
        assertThat(page.locator("#count")).containsText("2 on this tablet");
        server.meet(Fault.NONE);
        wake();
        assertThat(page.locator("#count")).containsText("All on the server");
        assertThat(server.kept()).extracting(l -> l.get("child").asString()).containsExactly("k1", "k5");
    }

    @Test
    void everyKindOfOutageLeavesTheLookWaiting() {
        seat("Itzel");
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        List<Runnable> outages = List.of(() -> server.meet(500), () -> server.meet(503), () -> server.meet(401),
                () -> server.meet(403), () -> server.meet(429), () -> server.meet(Fault.GATEWAY_PAGE),
                () -> server.meet(Fault.LOST_BEFORE_READING));
        for (Runnable outage : outages) {
            outage.run();
            page.waitForRequest("**/api/**", this::wake);
            assertThat(page.locator("#count")).containsText("1 on this tablet");
            assertThat(server.kept()).isEmpty();
        }
        server.meet(Fault.NONE);
        wake();
        assertThat(page.locator("#count")).containsText("All on the server");
        assertThat(server.kept()).hasSize(1);
    }

    @Test
    void smallerBatchesGoWhereLargeOnesDoNot() {
        server.takeAtMost(2);
        seat("Itzel", "Tane", "Linh");
        for (String phrase : List.of("counted_all", "began_at_ten", "made_ten")) {
            for (String name : List.of("Itzel", "Tane", "Linh")) {
                log(phrase, name);
            }
        }
        assertThat(page.locator("#count")).containsText("9 on this tablet");
        sendAtOnce();
        assertThat(page.locator("#count")).containsText("All on the server");
        assertThat(server.batchSizes()).allMatch(size -> size <= 2);
        assertThat(server.kept()).hasSize(9);
    }

    @Test
    void aRefusedLookStaysWithItsReasonAndCanBeMended() {
        server.refuse("k1");
        seat("Itzel", "Tane");
        log("made_ten", "Itzel");
        log("made_ten", "Tane");
        assertThat(state()).containsText("Tane");
        sendAtOnce();
        assertThat(page.locator("#count")).containsText("1 not taken");
        assertThat(server.kept()).hasSize(1);
        key("outbox").click();
        assertThat(page.locator("dialog .reason")).containsText("nobody of that id is in this class");
        page.locator("dialog select").selectOption("k2");
        until(() -> server.kept().size() == 2);
        assertThat(server.kept().get(1).get("child").asString()).isEqualTo("k2");
        assertThat(page.locator("#count")).not().containsText("not taken");
    }

    @Test
    void withoutNetworkThePageOpensAgainAndKeepsWhatWaits() {
        page.evaluate("() => navigator.serviceWorker.ready.then(() => true)");
        seat("Itzel", "Tane");
        context.setOffline(true);
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        page.reload();
        assertThat(page.locator("#count")).containsText("1 on this tablet");
        log("wrote_it", "Tane");
        assertThat(page.locator("#count")).containsText("2 on this tablet");
        context.setOffline(false);
        wake();
        sendAtOnce();
        until(() -> server.kept().size() == 2);
        assertThat(server.kept()).extracting(l -> l.get("child").asString()).containsExactly("k1", "k5");
    }

    @Test
    void anotherAdultSeesOnlyACountAndSendsNothingOfIt() {
        seat("Itzel");
        server.meet(503);
        log("made_ten", "Itzel");
        sendAtOnce();
        assertThat(page.locator("#notices")).containsText("server has trouble");
        server.signIn("aide@test");
        server.endPasses();
        server.meet(Fault.NONE);
        page.reload();
        assertThat(page.locator("#count")).containsText("All on the server · 1 of another adult");
        seat("Tane");
        log("made_ten", "Tane");
        sendAtOnce();
        until(() -> server.kept().size() == 1);
        assertThat(server.kept().getFirst().get("child").asString()).isEqualTo("k5");
        server.signIn("teacher@test");
        page.reload();
        until(() -> server.kept().size() == 2);
        assertThat(server.keptBy()).containsExactly("aide@test", "teacher@test");
    }

    @Test
    void aSessionOfAnotherAdultInTheSameBrowserNeverTakesTheseLooks() {
        seat("Itzel");
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        server.signIn("aide@test");
        page.evaluate("() => fetch('/api/table').then(() => true)");
        wake();
        assertThat(page.locator("#gate")).containsText("Somebody else has signed in");
        assertThat(page.locator("#visit")).isHidden();
        sendAtOnce();
        until(() -> server.kept().size() == 1);
        assertThat(server.keptBy()).containsExactly("teacher@test");
    }

    @Test
    void withoutASessionNoNameIsShown() {
        seat("Itzel");
        server.meet(401);
        page.reload();
        assertThat(page.locator("#gate")).containsText("Sign in to open the Table");
        assertThat(page.locator("body").innerText()).doesNotContain("Itzel");
    }

    @Test
    void theMeasuredClockGoesWithEachLook() {
        server.setClockAhead(3 * 3600000L);
        page.reload();
        assertThat(page.locator("#notices")).containsText("off by 3 h");
        seat("Itzel");
        log("made_ten", "Itzel");
        sendAtOnce();
        until(() -> server.kept().size() == 1);
        assertThat(server.kept().getFirst().get("clock_offset_ms").asLong()).isBetween(-10810000L, -10790000L);
    }

    @Test
    void shieldShowsInitialsThatStillTellTwoSofiasApart() {
        seat("Itzel", "Sof\u00eda M.", "Sof\u00eda R.");
        key("shield").click();
        String shown = page.locator("body").innerText();
        assertThat(shown).doesNotContain("Sof\u00eda").doesNotContain("Itzel");
        assertThat(Set.copyOf(page.locator(".cards .name").allInnerTexts())).hasSize(3);
    }

    @Test
    void twoTabsSendALookOnce() {
        Page second = newPage();
        seat("Itzel");
        log("made_ten", "Itzel");
        assertThat(state()).containsText(ON_TABLET);
        sendAtOnce();
        second.evaluate("() => window.dispatchEvent(new Event('online'))");
        until(() -> server.kept().size() == 1);
        assertThat(page.locator("#count")).containsText("All on the server");
        assertThat(server.batchSizes()).hasSize(1);
    }

    @Test
    void axeFindsNothingInAnyState() {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            expectAccessible("setup " + scheme);
            seat("Itzel", "Tane", "Linh");
            log("made_ten", "Itzel");
            assertThat(state()).containsText(ON_TABLET);
            key("more").click();
            expectAccessible("visit " + scheme);
            key("child-k1").click();
            expectAccessible("one child " + scheme);
            key("outbox").click();
            expectAccessible("outbox " + scheme);
            page.keyboard().press("Escape");
            key("end").click();
            key("none").click();
        }
        page.navigate(server.address() + "/login");
        expectAccessible("sign-in");
    }

    private void expectAccessible(String where) {
        List<Rule> found = new AxeBuilder(page)
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze().getViolations();
        assertThat(found).as(where)
                .extracting(r -> r.getId() + " " + r.getNodes().getFirst().getHtml()).isEmpty();
    }

    @Test
    void everyTargetIsLargeEnoughAndNothingOverflows() {
        seat("Itzel", "Sof\u00eda M.", "Tane", "Linh", "Noor");
        for (int[] size : new int[][] {{820, 1180}, {1180, 820}, {390, 844}, {320, 256}}) {
            page.setViewportSize(size[0], size[1]);
            String found = page.evaluate("() => [...document.querySelectorAll('button, a, select, input, summary')]"
                    + ".filter(e => e.offsetParent && (e.offsetHeight < 48 || e.offsetWidth < 48))"
                    + ".map(e => e.dataset.key + ' ' + e.offsetWidth + 'x' + e.offsetHeight).join(', ')").toString();
            assertThat(found).as(size[0] + " wide").isEmpty();
            assertThat(page.evaluate("() => document.documentElement.scrollWidth - innerWidth")).as(size[0] + " wide")
                    .isEqualTo(0);
        }
    }
}
