package org.stepwell.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** Chromium beside a running server, and adults of the sample class signed in to it. */
final class RealBrowser implements AutoCloseable {
    private final RunningServer server = RunningServer.start();
    private final Playwright playwright = Playwright.create(new Playwright.CreateOptions()
            .setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    private final Browser browser = playwright.chromium().launch(new BrowserType.LaunchOptions()
            .setExecutablePath(Path.of("/usr/bin/chromium"))
            .setArgs(List.of("--no-sandbox", "--disable-gpu", "--disable-background-networking",
                    "--disable-component-update", "--disable-sync", "--no-first-run")));

    RunningServer server() {
        return server;
    }

    /** A page of somebody who has not signed in, at a school in Chicago. */
    Page stranger(int width, int height, ColorScheme scheme) {
        Page page = browser.newContext(new Browser.NewContextOptions().setViewportSize(width, height)
                .setColorScheme(scheme).setLocale("en-US").setTimezoneId("America/Chicago")).newPage();
        page.setDefaultTimeout(60_000);
        return page;
    }

    Page signedIn(String name, int width, int height, ColorScheme scheme) {
        Page page = browser.newContext(new Browser.NewContextOptions()
                .setViewportSize(width, height).setColorScheme(scheme).setLocale("en-US")).newPage();
        page.setDefaultTimeout(60_000);
        page.navigate(server.address() + "/login");
        page.getByLabel("Sign-in name").fill(name);
        page.getByLabel("Password", new Page.GetByLabelOptions().setExact(true)).fill(RunningServer.PASSWORD);
        page.locator("button[type=submit]").click();
        page.waitForURL(server.address() + "/");
        page.locator("h1").waitFor();
        return page;
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
        server.close();
    }
}
