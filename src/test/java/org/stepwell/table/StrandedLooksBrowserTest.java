package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.stepwell.table.FaultyDay.CO_TEACHER;
import static org.stepwell.table.FaultyDay.TEACHER;

import com.google.gson.JsonObject;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.table.Fault.Kind;

/** What is left to an adult when a look cannot go the usual way: said on the screen, and mended from it. */
class StrandedLooksBrowserTest extends OnAFaultyDay {
    private Tablet tablet;

    @BeforeEach
    void takeATablet() {
        tablet = Tablet.inWindow(day.browser(), day.proxy().address(), promises);
    }

    @AfterEach
    void putAway() {
        tablet.close();
    }

    private void open(String adult) {
        tablet.signIn(adult);
        tablet.openVisit();
    }

    private void endsWell() {
        day.proxy().heal();
        tablet.drain();
        keepsItsPromises();
    }

    @Test
    void looksOfAnAdultWhoLostTheClassMeanwhileAreStoredAndWaitForAWord() {
        open(CO_TEACHER);
        day.proxy().goAway();
        tablet.save("q0603", 3);
        tablet.save("q0607", 4);
        day.store().access(CO_TEACHER, false);
        try {
            endsWell();
            assertThat(day.store().waiting(promises.mark())).isEqualTo(2);
        } finally {
            day.store().access(CO_TEACHER, true);
        }
    }

    @Test
    void anIdThatIsTakenByOtherContentIsShownAndSentUnderANewOne() {
        open(TEACHER);
        AtomicBoolean altered = new AtomicBoolean();
        tablet.page().route("**/api/observations", route -> {
            if (altered.getAndSet(true)) {
                route.resume();
                return;
            }
            APIResponse kept = route.fetch(new Route.FetchOptions().setPostData(
                    withAnotherTask(route.request().postData())));
            assertThat(kept.text()).contains("stored");
            route.abort();
        });
        String token = tablet.save("q0603", 3);
        tablet.putDown();
        tablet.until(altered::get);
        tablet.wake();
        assertThat(tablet.page().locator("#count")).containsText("1 not taken");
        tablet.key("outbox").click();
        assertThat(tablet.page().locator("dialog .reason")).containsText("other content");
        tablet.key("new").click();
        assertThat(tablet.page().locator("#count")).hasText("All on the server");
        assertThat(stored()).extracting(StoredLooks.Row::token).containsExactly(token);
        endsWell();
    }

    /** The same id with other content, as a page with a mistake might send it. */
    private static String withAnotherTask(String posted) {
        assertThat(posted).contains("\"task\":\"");
        return posted.replace("\"task\":\"", "\"task\":\"not");
    }

    @Test
    void whatWaitsIsOfferedAsAFileThatTheServerTakesAndTheTabletLaterDoesNotDouble() throws IOException {
        open(TEACHER);
        day.proxy().meet(Fault.of(Kind.STATUS_503), Integer.MAX_VALUE);
        tablet.save("q0603", 3);
        tablet.save("q0607", 4);
        tablet.putDown();
        tablet.until(() -> day.proxy().met() > 0);
        tablet.key("outbox").click();
        Download file = tablet.page().waitForDownload(() -> tablet.key("file").click());
        assertThat(file.suggestedFilename()).matches("stepwell-looks-\\d{4}-\\d\\d-\\d\\d\\.csv");
        List<String> lines = Files.readAllLines(file.path());
        assertThat(lines).hasSize(3);
        assertThat(lines.getFirst()).startsWith("id,observed_at,child,skill,task,step,help,kind,observer,tags,note");
        tablet.key("close").click();
        day.proxy().heal();
        Page files = tablet.context().newPage();
        files.navigate("http://localhost:" + day.server().port() + "/files");
        files.getByLabel("File", new Page.GetByLabelOptions().setExact(true)).selectOption("OBSERVATIONS");
        files.locator("vaadin-upload input[type=file]").setInputFiles(
                new FilePayload(file.suggestedFilename(), "text/csv", Files.readAllBytes(file.path())));
        assertThat(files.locator("body")).containsText("Tried: 2 good rows, no problem.");
        files.getByText("Take it in").click();
        assertThat(files.getByText("2 looks stored")).isVisible();
        files.close();
        endsWell();
        assertThat(stored()).hasSize(2);
    }

    @Test
    void aPageOneVersionBehindStillDelivers() {
        open(TEACHER);
        tablet.untilKeptForOffline();
        UnaryOperator<String> newer = text -> text.replace("</main>", "<p id=\"newer\">newer</p></main>");
        day.proxy().change("/table/", newer);
        tablet.openVisit();
        assertThat(tablet.page().locator("#newer")).hasCount(0);
        tablet.save("q0603", 3);
        tablet.save("q0607", 2);
        endsWell();
        assertThat(tablet.page().locator("#newer")).hasCount(0);
        assertThat(stored()).hasSize(2);
    }

    @Test
    void aDatabaseThatTheBrowserEmptiedIsSaidUntilItWasRead() {
        open(TEACHER);
        day.proxy().goAway();
        tablet.save("q0603", 3);
        tablet.save("q0607", 4);
        tablet.page().navigate("about:blank");
        day.proxy().heal();
        CDPSession devtools = tablet.context().newCDPSession(tablet.page());
        JsonObject arguments = new JsonObject();
        arguments.addProperty("origin", day.proxy().address());
        arguments.addProperty("storageTypes", "indexeddb,service_workers,cache_storage");
        devtools.send("Storage.clearDataForOrigin", arguments);
        tablet.openVisit();
        assertThat(tablet.page().locator("#notices")).containsText("at most 2, the first from");
        tablet.openVisit();
        assertThat(tablet.page().locator("#notices")).containsText("at most 2, the first from");
        tablet.key("emptied-read").click();
        assertThat(tablet.page().locator("#notices")).not().containsText("at most 2, the first from");
        tablet.openVisit();
        assertThat(tablet.page().locator("#notices")).not().containsText("at most 2, the first from");
        assertThat(stored()).isEmpty();
    }
}
