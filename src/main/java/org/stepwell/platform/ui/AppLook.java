package org.stepwell.platform.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.page.AppShellConfigurator;
import com.vaadin.flow.component.page.Viewport;
import com.vaadin.flow.server.AppShellSettings;
import org.springframework.stereotype.Component;

/** The page around the screens: our own style sheets, icon and language. */
@Component
@StyleSheet("look/stepwell.css")
@StyleSheet("look/views.css")
@Viewport("width=device-width, initial-scale=1")
public class AppLook implements AppShellConfigurator {
    @Override
    public void configurePage(AppShellSettings page) {
        page.addLink("icon", "/table/icon.svg");
        page.addMetaTag("referrer", "no-referrer");
    }
}
