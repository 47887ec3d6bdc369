package org.stepwell.platform.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasElement;
import com.vaadin.flow.component.ScrollIntoViewOption;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Footer;
import com.vaadin.flow.component.html.Header;
import com.vaadin.flow.component.html.Main;
import com.vaadin.flow.component.html.Nav;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.AfterNavigationEvent;
import com.vaadin.flow.router.AfterNavigationObserver;
import com.vaadin.flow.router.HighlightConditions;
import com.vaadin.flow.router.Layout;
import com.vaadin.flow.router.RouterLayout;
import com.vaadin.flow.router.RouterLink;
import com.vaadin.flow.server.menu.MenuConfiguration;
import com.vaadin.flow.spring.security.AuthenticationContext;
import jakarta.annotation.security.PermitAll;
import java.util.Objects;
import org.stepwell.core.wording.Language;

/** The bar above every screen. Screens put themselves on it by their menu entry; it knows none of them. */
@Layout
@PermitAll
class Shell extends Div implements RouterLayout, AfterNavigationObserver {
    private final Main main = new Main();
    private final Nav nav = new Nav();

    Shell(AuthenticationContext authentication) {
        addClassName("shell");
        Words words = Words.of("shell");
        Span mark = new Span();
        mark.addClassName("sw-stair");
        mark.getElement().setAttribute("data-step", "5").setAttribute("aria-hidden", "true");
        Div name = new Div(mark, new Span("Stepwell"));
        name.addClassName("shell-mark");
        nav.getElement().setAttribute("aria-label", words.say("screens"));
        MenuConfiguration.getMenuEntries().forEach(entry -> nav.add(link(named(entry.title()), entry.menuClass())));
        Anchor table = new Anchor("/table/", words.say("table"));
        table.setRouterIgnore(true);
        nav.addComponentAtIndex(1, table);
        Div tools = new Div(language(words), Parts.button(words.say("sign-out"), authentication::logout));
        tools.addClassName("shell-tools");
        Header bar = new Header(name, nav, tools);
        bar.addClassName("shell-bar");
        main.setId("content");
        main.getElement().setAttribute("tabindex", "-1");
        Anchor skip = new Anchor("#content", words.say("to-content"));
        skip.setRouterIgnore(true);
        skip.addClassName("skip");
        Footer honest = new Footer(Parts.soft(words.say("honest")));
        add(skip, bar, main, honest);
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

    /** A menu entry names its text as {@code FEATURE.text}, so that it can be said in two languages. */
    static String named(String title) {
        int dot = title.indexOf('.');
        return dot < 0 ? title : Words.of(title.substring(0, dot)).say(title.substring(dot + 1));
    }

    private static Component link(String title, Class<? extends Component> view) {
        RouterLink link = new RouterLink(title, Objects.requireNonNull(view));
        link.setHighlightCondition(HighlightConditions.sameLocation());
        return link;
    }

    /** On a narrow screen the bar is longer than the screen; the link of the open one comes into view. */
    @Override
    public void afterNavigation(AfterNavigationEvent event) {
        String here = event.getLocation().getPath();
        nav.getChildren().filter(link -> link instanceof RouterLink route && route.getHref().equals(here)).findFirst()
                .ifPresent(link -> link.scrollIntoView(ScrollIntoViewOption.Block.NEAREST,
                        ScrollIntoViewOption.Inline.CENTER));
    }

    @Override
    public void showRouterLayoutContent(HasElement content) {
        main.getElement().removeAllChildren();
        main.getElement().appendChild(content.getElement());
    }
}
