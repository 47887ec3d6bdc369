package org.stepwell.platform.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Nav;
import com.vaadin.flow.router.HighlightConditions;
import com.vaadin.flow.router.RouterLink;
import com.vaadin.flow.server.menu.MenuConfiguration;
import com.vaadin.flow.server.menu.MenuEntry;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The ways to the screens: a row of groups, and under it the screens of the open one when it has more than one. A group
 * leads to its first screen, so that nothing opens over the page and each screen is two taps away, by thumb or keys.
 */
class Bar extends Nav {
    private record Group(RouterLink link, List<RouterLink> screens, Div row) {
    }

    private final Map<BarGroup, Group> groups = new EnumMap<>(BarGroup.class);

    Bar(Words words) {
        getElement().setAttribute("aria-label", words.say("screens"));
        Div top = new Div();
        top.addClassName("bar-groups");
        add(top);
        Map<BarGroup, List<MenuEntry>> entries = MenuConfiguration.getMenuEntries().stream()
                .collect(Collectors.groupingBy(entry -> BarGroup.of(Objects.requireNonNull(entry.order())),
                        () -> new EnumMap<>(BarGroup.class), Collectors.toList()));
        entries.forEach((group, screens) -> {
            RouterLink link = new RouterLink(words.say(group.key()), menuClass(screens.getFirst()));
            link.setHighlightCondition(HighlightConditions.never());
            Div row = new Div();
            row.addClassName("bar-screens");
            List<RouterLink> links = screens.stream().map(Bar::link).toList();
            links.forEach(row::add);
            top.add(link);
            if (links.size() > 1) {
                add(row);
            }
            groups.put(group, new Group(link, links, row));
        });
        Anchor table = new Anchor("/table/", words.say("table"));
        table.setRouterIgnore(true);
        top.addComponentAtIndex(1, table);
        mark(null, "");
    }

    private static Class<? extends Component> menuClass(MenuEntry entry) {
        return Objects.requireNonNull(entry.menuClass());
    }

    private static RouterLink link(MenuEntry entry) {
        RouterLink link = new RouterLink(named(entry.title()), menuClass(entry));
        link.setHighlightCondition(HighlightConditions.never());
        return link;
    }

    /** A menu entry names its text as {@code FEATURE.text}, so that it can be said in two languages. */
    static String named(String title) {
        int dot = title.indexOf('.');
        return dot < 0 ? title : Words.of(title.substring(0, dot)).say(title.substring(dot + 1));
    }

    /**
     * Shows the group of the open screen. A screen that stands on no bar belongs to the one its address begins with;
     * one that is reached from several, as a child's, leaves the group open from which it was reached.
     *
     * @param here address of the open screen, without a leading slash
     */
    void show(String here) {
        groups.entrySet().stream().filter(group -> group.getValue().screens().stream().anyMatch(s -> leads(s, here)))
                .findFirst().ifPresentOrElse(group -> mark(group.getKey(), here),
                        () -> groups.values().forEach(group -> group.screens().forEach(s -> current(s, null))));
    }

    private static boolean leads(RouterLink screen, String here) {
        String to = screen.getHref();
        return here.equals(to) || !to.isEmpty() && here.startsWith(to + "/");
    }

    private void mark(@Nullable BarGroup open, String here) {
        groups.forEach((name, group) -> {
            boolean shown = name == open;
            current(group.link(), !shown ? null : group.screens().size() > 1 ? "true" : page(group.link(), here));
            group.row().getElement().setAttribute("hidden", !shown);
            group.screens().forEach(s -> current(s, shown && leads(s, here) ? page(s, here) : null));
        });
    }

    private static String page(RouterLink link, String here) {
        return link.getHref().equals(here) ? "page" : "true";
    }

    private static void current(RouterLink link, @Nullable String how) {
        if (how == null) {
            link.getElement().removeAttribute("aria-current");
        } else {
            link.getElement().setAttribute("aria-current", how);
        }
    }
}
