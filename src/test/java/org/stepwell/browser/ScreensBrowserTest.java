package org.stepwell.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Every screen in every size and both color schemes: nothing for axe, nothing cut off, nothing too small to tap. */
class ScreensBrowserTest {
    private static final List<int[]> SIZES = List.of(new int[] {1180, 820}, new int[] {820, 1180},
            new int[] {390, 844}, new int[] {1440, 900});
    private static final String[] RULES = {"wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"};
    /** Visible controls whose box is lower than 48 px and that no taller one of ours surrounds. */
    private static final String TOO_SMALL = """
            [...document.querySelectorAll('main a, main button, main input, main select, main summary, header a, '
                + 'header button')].filter(e => e.checkVisibility() && e.getClientRects().length
                && !e.closest('vaadin-upload') && !e.classList.contains('skip')
                && Math.round(e.getBoundingClientRect().height) < 48).map(e => e.outerHTML.slice(0, 120))""";

    private static RealBrowser browser;

    @BeforeAll
    static void startEverything() {
        browser = new RealBrowser();
    }

    @AfterAll
    static void stopEverything() {
        browser.close();
    }

    /** Paths by name of the picture: every screen on the bar, and those that another one leads to. */
    private static Map<String, String> screens(Page page) {
        Map<String, String> screens = new LinkedHashMap<>();
        for (Locator link : page.locator("header nav a:not([href^='/table'])").all()) {
            String path = link.getAttribute("href");
            screens.put(path.isEmpty() ? "today" : path, path);
        }
        show(page, "class-map");
        screens.put("child", page.locator("tbody th a").first().getAttribute("href"));
        screens.put("what-if", "what-if");
        screens.put("tomorrow", "groups/tomorrow");
        assertThat(screens).containsKeys("today", "class-map", "suggestions", "files");
        return screens;
    }

    private static void show(Page page, String path) {
        page.navigate(browser.server().address() + "/" + path);
        page.locator("main h1").waitFor();
    }

    @Test
    void everyScreenFitsEverySizeInLightAndDark() {
        List<String> wrong = new ArrayList<>();
        Page page = browser.signedIn("teacher@sample", 1180, 820, ColorScheme.LIGHT);
        screens(page).forEach((name, path) -> {
            show(page, path);
            for (int[] size : SIZES) {
                page.setViewportSize(size[0], size[1]);
                for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
                    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
                    String what = name + "-" + size[0] + "x" + size[1] + "-" + scheme.name().toLowerCase(Locale.ROOT);
                    if (scheme == ColorScheme.LIGHT || size[0] == 390 || size[0] == 1180) {
                        page.screenshot(new Page.ScreenshotOptions()
                                .setPath(Path.of("target/screens/" + what + ".png")));
                    }
                    if (scheme == ColorScheme.LIGHT) {
                        int over = (int) page.evaluate("document.documentElement.scrollWidth - innerWidth");
                        if (over > 0) {
                            wrong.add(what + " is " + over + " px too wide");
                        }
                        ((List<?>) page.evaluate(TOO_SMALL)).forEach(e -> wrong.add(what + " too low: " + e));
                    }
                    if (scheme == ColorScheme.DARK ? size[0] == 390 : size[0] == 820) {
                        new AxeBuilder(page).withTags(List.of(RULES)).analyze().getViolations().forEach(rule ->
                                wrong.add(what + " " + rule.getId() + " " + rule.getNodes().getFirst().getHtml()));
                    }
                }
            }
            page.setViewportSize(1180, 820);
        });
        assertThat(wrong).isEmpty();
        page.context().close();
    }

    @Test
    void oneChoiceOfLanguageHoldsForScreensTableAndSignIn() {
        Page page = browser.signedIn("teacher@sample", 820, 1180, ColorScheme.LIGHT);
        assertThat(page.evaluate("document.documentElement.lang")).isEqualTo("en");
        page.getByText("Español").click();
        page.getByText("La lección de ahora").waitFor();
        assertThat(page.evaluate("document.documentElement.lang")).isEqualTo("es");
        assertThat(page.title()).isEqualTo("Hoy · Stepwell");
        for (String path : List.of("/table/", "/login")) {
            page.navigate(browser.server().address() + path);
            page.locator("html[lang=es]").waitFor();
        }
        page.getByText("English").click();
        show(page, "class-map");
        assertThat(page.title()).isEqualTo("Class map · Stepwell");
        page.context().close();
    }
}
