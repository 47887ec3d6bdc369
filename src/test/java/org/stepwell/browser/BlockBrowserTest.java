package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.stepwell.platform.Settings;
import org.stepwell.platform.store.OpenStore;

/** One whole block on the sample class, from groups to the item report. Rotations last three minutes of a moved clock. */
class BlockBrowserTest extends InRealBrowser {
    private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");
    private static final int LAST_HOUR = 23;
    private static ZoneId zone;

    /** A block may not run past midnight: in the last hour of its day the school moves to where it is evening. */
    @BeforeAll
    static void timeIsLeftToday() throws SQLException {
        zone = LocalTime.now(CHICAGO).getHour() < LAST_HOUR ? CHICAGO : ZoneId.of("Pacific/Honolulu");
        Settings settings = Settings.from(name -> name.equals("STEPWELL_HOME") ? browser.server().home().toString() : null);
        try (OpenStore store = OpenStore.join(settings, Clock.systemUTC());
                Connection owner = store.ownerConnections().owner(); Statement statement = owner.createStatement()) {
            statement.execute("alter table school no force row level security");
            assertThat(statement.executeUpdate("update school set time_zone = '" + zone + "'")).isEqualTo(1);
            statement.execute("alter table school force row level security");
        }
    }

    @Test
    void aWholeBlockFromGroupsToTheItemReport() throws IOException {
        Page page = browser.signedIn("teacher@sample", 1180, 820, ColorScheme.LIGHT);
        formGroups(page);
        setUp(page);
        fill(page, "First rotation at", LocalTime.now(zone).truncatedTo(ChronoUnit.MINUTES).toString());
        press(page, "Begin the block");
        assertThat(page.locator("sw-block-clock .clock-label")).containsText("Rotation 1 of 5 · Group");
        assertThat(page.locator(".block-board td.now.teacher")).hasCount(1);
        SeenScreen.passes(page, "block-running");
        logsInTwoRotations(page);
        losesTime(page);
        sheets(page);
        decidesThePacing(page);
        scoresACheck(page);
        page.context().close();
    }

    private static void formGroups(Page page) {
        ByTheBar.open(page, "Block", "Groups");
        page.getByText("Take this to the board").first().click();
        assertThat(page.getByText("On the board now. Nothing is saved yet.")).isVisible();
        page.locator("input[type=date]").first().fill(LocalDate.now(zone).toString());
        page.locator("input[type=date]").first().blur();
        page.getByText("Save these groups").click();
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("Saved. These groups hold from");
    }

    private static void setUp(Page page) {
        ByTheBar.open(page, "Block", "Math block");
        assertThat(page.getByText("Say first which stations there are")).isVisible();
        SeenScreen.passes(page, "block-set-up");
        fill(page, "Minutes in a rotation", "2");
        press(page, "Save stations and times");
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("3 to 60 minutes");
        fill(page, "Minutes in a rotation", "3");
        fill(page, "Minutes to change", "0");
        page.getByLabel("Has to lie ready").nth(1).fill("ten frames, cubes");
        page.getByLabel("Has to lie ready").nth(1).blur();
        page.getByLabel("Adult there").nth(1).fill("Rafael Osterlund");
        page.getByLabel("Adult there").nth(1).blur();
        press(page, "Save stations and times");
        assertThat(page.getByText("As it would run today").or(page.getByText("No block is planned"))).isVisible();
        offersToJoinASmallGroup(page);
        page.getByLabel("Rotations today").selectOption("5");
        page.setViewportSize(390, 844);
        SeenScreen.passes(page, "block-phone");
        page.setViewportSize(1180, 820);
    }

    /** Children are marked away until a group is too small; then all are back, and nothing is offered any more. */
    private static void offersToJoinASmallGroup(Page page) {
        page.getByText("Away today: 0").click();
        Locator offer = page.getByText("Sit together today");
        List<String> away = new ArrayList<>();
        for (String name : page.locator("button[aria-label$=' is away']").allTextContents()) {
            press(page, name + " is away");
            assertThat(page.getByText("Away today: " + (away.size() + 1))).isVisible();
            away.add(name);
            if (offer.count() > 0) {
                break;
            }
        }
        assertThat(offer.first()).isVisible();
        SeenScreen.passes(page, "block-few");
        for (String name : away) {
            press(page, name + " is here");
            assertThat(page.locator("button[aria-label='" + name + " is away']")).hasCount(1);
        }
        assertThat(offer).hasCount(0);
        page.getByText("Away today: 0").waitFor();
    }

    /** The Table opens on the group whose turn it is; three minutes later it offers the next, without network. */
    private static void logsInTwoRotations(Page page) {
        Page table = page.context().newPage();
        table.clock().install();
        table.navigate(browser.server().address() + "/table/");
        Locator seated = table.locator("#setup .roster [aria-pressed='true'] .name");
        assertThat(seated.first()).isVisible();
        List<String> first = seated.allInnerTexts();
        table.locator("[data-key='start']").click();
        log(table);
        opensForTheOtherAdultOnTheOtherGroup(table);
        page.context().setOffline(true);
        table.clock().fastForward(3 * 60_000L + 1_000);
        table.locator("[data-key='uncover']").click();
        assertThat(table.locator(".turn")).containsText("It is the turn of group");
        table.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/table-turn.png")));
        table.locator("[data-key='turn']").click();
        List<String> second = table.locator("#children .card .name").allInnerTexts();
        assertThat(second).isNotEmpty().doesNotContainAnyElementsOf(first);
        log(table);
        page.context().setOffline(false);
        Response sent = table.waitForResponse("**/api/observations", () -> table.locator("[data-key='home']").click());
        assertThat(sent.status()).isEqualTo(200);
        table.close();
    }

    /** The adult named at the second station has another group at every turn, and the Table opens on it. */
    private static void opensForTheOtherAdultOnTheOtherGroup(Page table) {
        Page other = browser.signedIn("coteacher@sample", 820, 1180, ColorScheme.LIGHT);
        other.navigate(browser.server().address() + "/table/");
        List<Object> own = groupsByTurn(table);
        assertThat(groupsByTurn(other)).hasSameSizeAs(own).zipSatisfy(own, (one, two) ->
                assertThat(one).isNotEqualTo(two));
        Locator now = other.locator("[data-key^='group-'][aria-pressed='true']");
        assertThat(now).containsText("now");
        assertThat(other.locator("#setup .roster [aria-pressed='true']").first()).isVisible();
        other.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/table-second-adult.png")));
        other.context().close();
    }

    @SuppressWarnings("unchecked")
    private static List<Object> groupsByTurn(Page table) {
        return (List<Object>) table.evaluate("async () => (await (await fetch('/api/table')).json())"
                + ".block.map(turn => turn.group)");
    }

    private static void log(Page table) {
        table.locator("#phrases [data-key^='cell-']").first().click();
        assertThat(table.locator("#last .state")).containsText("Saved on this tablet");
    }

    private static void losesTime(Page page) {
        page.reload();
        page.getByText("Time is lost").click();
        fill(page, "Minutes lost from now", "5");
        press(page, "Show the ways");
        assertThat(page.getByText("Drop: same end")).isVisible();
        SeenScreen.passes(page, "block-lost");
        Locator drop = page.locator(".block-ways .sheet").filter(new Locator.FilterOptions().setHasText("Drop"));
        assertThat(drop).containsText("0 of 3 minutes at the teacher table");
        drop.getByText("Go on this way").click();
        assertThat(page.locator(".block-ways .sheet")).hasCount(0);
        standsStill(page);
        page.getByText("Minutes at the teacher table, last 28 days").click();
        assertThat(page.locator("main table").last()).containsText("owed");
        press(page, "Large");
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/block-clock-large.png")));
        page.keyboard().press("Escape");
        assertThat(page.locator("sw-block-clock.large")).hasCount(0);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        SeenScreen.passes(page, "block-owed-dark");
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
        String until = page.locator("sw-block-clock .clock-label").innerText();
        press(page, "It ended early: go on now");
        assertThat(page.getByText("It ended early: go on now")).hasCount(0);
        assertThat(page.locator("sw-block-clock .clock-label")).not().hasText(until);
    }

    /** The clock shows the same minutes as long as the time is lost, and says when it goes on. */
    private static void standsStill(Page teacher) {
        Page page = teacher.context().newPage();
        page.setViewportSize(1180, 820);
        page.clock().install();
        page.navigate(browser.server().address() + "/block");
        Locator left = page.locator("sw-block-clock .clock-left");
        assertThat(page.locator("sw-block-clock .clock-label")).containsText("The clock stands still until");
        assertThat(page.locator("sw-block-clock .clock-next")).containsText("Then: Rotation");
        SeenScreen.passes(page, "block-still");
        String shown = left.innerText();
        page.clock().runFor(60_000);
        assertThat(left).hasText(shown);
        assertThat(page.locator("sw-block-clock .clock-label")).containsText("The clock stands still until");
        page.clock().runFor(5 * 60_000);
        assertThat(page.locator("sw-block-clock .clock-label")).not().containsText("stands still");
        assertThat(left).not().hasText(shown);
        page.close();
    }

    private static void sheets(Page page) throws IOException {
        for (String reader : List.of("wall", "substitute")) {
            String href = page.getByText("Sheet for " + (reader.equals("wall") ? "the wall" : "a substitute"))
                    .getAttribute("href");
            APIResponse pdf = page.request().get(browser.server().address() + href);
            assertThat(pdf.status()).isEqualTo(200);
            Files.write(Path.of("target/screens/block-" + reader + ".pdf"), pdf.body());
            try (PDDocument document = Loader.loadPDF(pdf.body())) {
                assertThat(new PDFTextStripper().getText(document)).contains("Teacher table", "Group 5", "Room 6");
                ImageIO.write(new PDFRenderer(document).renderImageWithDPI(0, 80), "png",
                        Path.of("target/screens/block-" + reader + ".png").toFile());
            }
        }
    }

    private static void decidesThePacing(Page page) {
        ByTheBar.open(page, "Unit", "Unit");
        press(page, "Start from the due dates");
        press(page, "Another day");
        assertThat(page.getByText("chose another day")).isVisible();
    }

    private static void scoresACheck(Page page) {
        ByTheBar.open(page, "Unit", "Unit check");
        page.getByText("Make a blueprint").click();
        page.getByText("Save blueprint").click();
        assertThat(page.getByText("Saved.")).isVisible();
        page.locator("main a.button").getByText("Score", new Locator.GetByTextOptions().setExact(true)).first().click();
        page.locator("sw-check-grid table").waitFor();
        for (int row = 0; row < 3; row++) {
            page.locator("sw-check-grid tbody tr").nth(row).locator("td[data-item]").nth(row).click();
            page.locator("[data-do=rest]").nth(row).click();
        }
        assertThat(page.locator(".check-status")).containsText("Everything is stored.");
        page.locator("main a.button").getByText("Results").click();
        assertThat(page.getByText("3 of 23 children, 20 items.")).isVisible();
    }
}
