package org.stepwell.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** From the invented sample to a school of one's own, in a real browser against the real program. */
class SetUpBrowserTest {
    private static final String OWN = "seven quiet herons";
    private static final Map<String, int[]> SIZES = Map.of("tablet", new int[] {820, 1180}, "phone",
            new int[] {390, 844}, "desktop", new int[] {1280, 900});
    private static RealBrowser browser;
    private static RunningServer server;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
        server = browser.server();
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    @Test
    void theSampleGoesOutASchoolIsSetUpItsAdultsComeAndGo() {
        String code = takesTheSampleOut();
        showsItselfInEverySize(code);
        Page teacher = setsUpASchool(code);
        addsAChildAndStartsAUnit(teacher);
        String invitation = makesACode(teacher);
        Page aide = entersByTheKeyboard(invitation);
        endsTheAccess(teacher, aide);
        changesThePassword(teacher);
        choosesAPasswordAfterAReset(teacher);
    }

    private static void findNothing(Page page, String what) {
        List<String> found = new AxeBuilder(page)
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")).analyze()
                .getViolations().stream().map(rule -> rule.getId() + " " + rule.getNodes().getFirst().getHtml())
                .toList();
        assertThat(found).as(what).isEmpty();
    }

    private static void picture(Page page, String name) {
        page.screenshot(new Page.ScreenshotOptions().setPath(Path.of("target/screens/" + name + ".png"))
                .setFullPage(true));
    }

    private static Page open(String path, int width, int height, ColorScheme scheme) {
        Page page = browser.stranger(width, height, scheme);
        page.navigate(server.address() + path);
        return page;
    }

    private static void press(Page page, String name) {
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true)).click();
    }

    private static void fill(Page page, String label, String text) {
        page.getByLabel(label, new Page.GetByLabelOptions().setExact(true)).first().fill(text);
    }

    private static void people(Page page) {
        page.navigate(server.address() + "/files");
        page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setName("Adults")).waitFor();
    }

    /** Gives the code that is printed once the store is empty. */
    private static String takesTheSampleOut() {
        Page page = browser.signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        people(page);
        picture(page, "people-sample");
        page.getByText("About taking the sample out").click();
        page.locator("h1").filter(new Locator.FilterOptions().setHasText("Take the sample out")).waitFor();
        findNothing(page, "taking the sample out");
        press(page, "Take the sample out");
        picture(page, "sample-removal");
        press(page, "Yes, take it out for good");
        page.waitForURL(server.address() + "/set-up");
        page.context().close();
        Page again = open("/login", 820, 1180, ColorScheme.LIGHT);
        again.waitForURL(server.address() + "/set-up");
        again.context().close();
        return server.printed(Pattern.compile("with the code (\\S+)"));
    }

    private static void showsItselfInEverySize(String code) {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            SIZES.forEach((size, pixels) -> {
                Page page = open("/set-up", pixels[0], pixels[1], scheme);
                page.getByLabel("One-time code").waitFor();
                findNothing(page, "set-up on " + size + " " + scheme);
                assertThat((Boolean) page.evaluate("document.documentElement.scrollWidth <= innerWidth"))
                        .as("fits " + size).isTrue();
                picture(page, "set-up-" + size + "-" + scheme.name().toLowerCase(java.util.Locale.ROOT));
                page.context().close();
            });
        }
        Page spanish = open("/set-up", 820, 1180, ColorScheme.LIGHT);
        spanish.getByText("Español").click();
        assertThat(spanish.getByLabel("Código de un solo uso")).isVisible();
        findNothing(spanish, "set-up in Spanish");
        spanish.context().close();
        assertThat(code).matches("([a-z2-9]{4}-){3}[a-z2-9]{4}");
    }

    private static void fillSetUp(Page page, String code, String password) {
        fill(page, "One-time code", code);
        fill(page, "Name of the school", "Alder Hill");
        fill(page, "Class, as on its door", "Room 1");
        fill(page, "Your name", "Ana Ruiz");
        fill(page, "Sign-in name", "ana@hill");
        fill(page, "New password", password);
    }

    private static Page setsUpASchool(String code) {
        List<String> violations = new ArrayList<>();
        Page page = open("/set-up", 820, 1180, ColorScheme.LIGHT);
        page.onConsoleMessage(message -> {
            if (message.text().contains("Content Security Policy")) {
                violations.add(message.text());
            }
        });
        Page other = open("/set-up", 820, 1180, ColorScheme.LIGHT);
        assertThat(page.getByLabel("The school’s time zone")).hasValue("America/Chicago");
        fillSetUp(page, "not-the-code", OWN);
        press(page, "Make the school and sign in");
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("That is not the code.");
        assertThat(page.getByLabel("One-time code")).isFocused();
        fillSetUp(page, code, "password12345678");
        press(page, "Make the school and sign in");
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("among the first that anybody would try");
        findNothing(page, "set-up with a fault");
        picture(page, "set-up-fault");
        fillSetUp(page, code, OWN);
        page.getByLabel("The school’s time zone").fill("Chicago");
        press(page, "Make the school and sign in");
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("no time zone of the list");
        page.getByLabel("The school’s time zone").fill("america/chicago");
        press(page, "Make the school and sign in");
        page.waitForURL(server.address() + "/");
        assertThat(page.getByText("Begin here")).isVisible();
        findNothing(page, "today of an empty class");
        picture(page, "today-empty");
        fillSetUp(other, code, OWN);
        press(other, "Make the school and sign in");
        assertThat(other.getByText("Stepwell is set up here already.")).isVisible();
        findNothing(other, "set up before");
        other.context().close();
        assertThat(violations).isEmpty();
        return page;
    }

    private static void addsAChildAndStartsAUnit(Page page) {
        for (String screen : List.of("class-map", "suggestions", "files")) {
            page.navigate(server.address() + "/" + screen);
            page.locator("h1").waitFor();
            findNothing(page, screen + " of an empty class");
            picture(page, "empty-" + screen);
        }
        people(page);
        press(page, "Add child");
        assertThat(page.getByText("The given name: please fill it in.")).isVisible();
        fill(page, "Given name", "Ilse");
        press(page, "Add child");
        assertThat(page.getByText("Ilse is in the class.")).isVisible();
        assertThat(page.getByLabel("Given name").first()).isFocused();
        page.keyboard().type("Tane");
        page.keyboard().press("Enter");
        assertThat(page.getByText("Tane is in the class.")).isVisible();
        fill(page, "Title", "Tens and ones");
        press(page, "Start a new unit today");
        assertThat(page.getByText("Tens and ones was started.")).isVisible();
        Locator line = page.getByRole(AriaRole.GROUP, new Page.GetByRoleOptions().setName(Pattern.compile("^T05")));
        line.getByLabel("Due from").fill("2026-01-12");
        findNothing(page, "pacing by hand");
        picture(page, "pacing-by-hand");
        press(page, "Save the pacing");
        assertThat(page.getByText("The pacing is saved.")).isVisible();
    }

    private static String makesACode(Page page) {
        people(page);
        fill(page, "For whom", "Bo Lund");
        page.getByLabel("As", new Page.GetByLabelOptions().setExact(true)).first().selectOption("AIDE");
        press(page, "Make a code");
        Locator slip = page.locator(".slip");
        assertThat(slip.getByText("For Bo Lund, Aide")).isVisible();
        assertThat(slip.locator("a")).hasText(server.address() + "/sign-in/invited.html");
        findNothing(page, "people with a slip");
        picture(page, "people-slip");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        assertThat(slip.locator(".code")).isVisible();
        assertThat(page.getByText("Ilse", new Page.GetByTextOptions().setExact(true)).first()).not().isVisible();
        picture(page, "people-slip-printed");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
        String code = slip.locator(".code").textContent();
        press(page, "Close");
        assertThat(page.locator(".slip")).hasCount(0);
        return code;
    }

    private static Page entersByTheKeyboard(String code) {
        Page page = open("/sign-in/invited.html", 390, 844, ColorScheme.DARK);
        findNothing(page, "invitation");
        assertThat(page.getByLabel("Code of the invitation")).isFocused();
        picture(page, "invited");
        for (String text : List.of(code, "Bo Lund", "bo@hill", OWN)) {
            page.keyboard().type(text);
            page.keyboard().press("Tab");
        }
        page.keyboard().press("Tab");
        page.keyboard().press("Space");
        page.waitForURL(server.address() + "/");
        people(page);
        assertThat(page.getByText("Bo Lund (you), Aide")).isVisible();
        assertThat(page.getByText("Let somebody in")).hasCount(0);
        findNothing(page, "people as an aide");
        picture(page, "people-phone-dark");
        return page;
    }

    private static void endsTheAccess(Page teacher, Page aide) {
        people(teacher);
        press(teacher, "End access: Bo Lund");
        assertThat(teacher.getByText("End the access of Bo Lund to this class now?")).isVisible();
        findNothing(teacher, "asked about the end");
        picture(teacher, "people-end");
        press(teacher, "Yes, end it now");
        assertThat(teacher.getByText("The access of Bo Lund is over.")).isVisible();
        // the first request after the end leads to sign-in, so there is no bar left to read
        aide.locator("header nav .bar-groups").getByText("Week", new Locator.GetByTextOptions().setExact(true)).click();
        aide.waitForURL(Pattern.compile(".*/login.*"));
        aide.context().close();
    }

    private static void changesThePassword(Page teacher) {
        Page elsewhere = open("/login", 820, 1180, ColorScheme.LIGHT);
        findNothing(elsewhere, "sign-in");
        picture(elsewhere, "sign-in");
        signIn(elsewhere, OWN);
        elsewhere.waitForURL(server.address() + "/");
        people(teacher);
        teacher.getByText("Change your own password").click();
        findNothing(teacher, "change of the password");
        picture(teacher, "change-password");
        fill(teacher, "Password until now", "not this one at all");
        fill(teacher, "New password", "eight loud magpies");
        press(teacher, "Save the new one");
        assertThat(teacher.getByRole(AriaRole.ALERT)).containsText("not your password until now");
        fill(teacher, "Password until now", OWN);
        press(teacher, "Save the new one");
        assertThat(teacher.getByText("Saved. Your sessions on other devices are over.")).isVisible();
        people(teacher);
        elsewhere.reload();
        elsewhere.waitForURL(Pattern.compile(".*/login.*"));
        elsewhere.context().close();
    }

    private static void signIn(Page page, String password) {
        fill(page, "Sign-in name", "ana@hill");
        fill(page, "Password", password);
        page.locator("button[type=submit]").click();
    }

    private static void choosesAPasswordAfterAReset(Page teacher) {
        String oneTime = server.command("adult", "reset", "ana@hill");
        teacher.reload();
        teacher.waitForURL(Pattern.compile(".*/login.*"));
        signIn(teacher, oneTime);
        teacher.waitForURL(server.address() + "/sign-in/first.html");
        findNothing(teacher, "choice of a password");
        picture(teacher, "first-password");
        fill(teacher, "Sign-in name", "ana@hill");
        fill(teacher, "One-time password", oneTime);
        fill(teacher, "New password", "at alder hill school");
        press(teacher, "Save and sign in");
        assertThat(teacher.getByRole(AriaRole.ALERT)).containsText("neither your sign-in name nor the name of the");
        fill(teacher, "New password", "nine slow pelicans");
        press(teacher, "Save and sign in");
        teacher.waitForURL(server.address() + "/");
        assertThat(teacher.locator("h1")).isVisible();
        teacher.context().close();
    }
}
