package org.stepwell.platform.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasElement;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Footer;
import com.vaadin.flow.component.html.Header;
import com.vaadin.flow.component.html.Main;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.AfterNavigationEvent;
import com.vaadin.flow.router.AfterNavigationObserver;
import com.vaadin.flow.router.Layout;
import com.vaadin.flow.router.NavigationTrigger;
import com.vaadin.flow.router.RouterLayout;
import com.vaadin.flow.spring.security.AuthenticationContext;
import jakarta.annotation.security.PermitAll;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.wording.Language;

/** The bar above every screen. Screens put themselves on it by their menu entry; it knows none of them. */
@Layout
@PermitAll
class Shell extends Div implements RouterLayout, AfterNavigationObserver {
    private final Main main = new Main();
    private @Nullable String here;
    private final Bar bar = new Bar(Words.of("shell"));

    Shell(AuthenticationContext authentication) {
        addClassName("shell");
        Words words = Words.of("shell");
        Span mark = new Span();
        mark.addClassName("sw-stair");
        mark.getElement().setAttribute("data-step", "5").setAttribute("aria-hidden", "true");
        Div name = new Div(mark, new Span("Stepwell"));
        name.addClassName("shell-mark");
        Div tools = new Div(language(words), Parts.button(words.say("sign-out"), authentication::logout));
        tools.addClassName("shell-tools");
        Header head = new Header(name, bar, tools);
        head.addClassName("shell-bar");
        main.setId("content");
        main.getElement().setAttribute("tabindex", "-1");
        Anchor skip = new Anchor("#content", words.say("to-content"));
        skip.setRouterIgnore(true);
        skip.addClassName("skip");
        Footer honest = new Footer(Parts.soft(words.say("honest")));
        add(skip, head, main, honest);
    }

    private static Component language(Words words) {
        Language other = Words.language() == Language.ENGLISH ? Language.SPANISH : Language.ENGLISH;
        Component button = Parts.button(words.say("other-language"), () -> {
            ReaderLanguage.keep(other);
            UI.getCurrent().getPage().reload();
        });
        button.getElement().setAttribute("lang", other.code());
        return button;
    }

    /** Another screen begins at its top, wherever the one before was scrolled to; the way back is the browser's. */
    @Override
    public void afterNavigation(AfterNavigationEvent event) {
        String path = event.getLocation().getPath();
        bar.show(path);
        if (here != null && !path.equals(here)
                && event.getLocationChangeEvent().getTrigger() != NavigationTrigger.HISTORY) {
            UI.getCurrent().getPage().executeJs("window.scrollTo(0, 0)");
        }
        here = path;
    }

    @Override
    public void showRouterLayoutContent(HasElement content) {
        main.getElement().removeAllChildren();
        main.getElement().appendChild(content.getElement());
    }
}
