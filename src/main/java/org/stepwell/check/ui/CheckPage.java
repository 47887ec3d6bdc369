package org.stepwell.check.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.NotFoundException;
import com.vaadin.flow.router.RouteParam;
import com.vaadin.flow.router.RouteParameters;
import com.vaadin.flow.router.RouterLink;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;

/** A screen about one check, named by its address. */
@StyleSheet("context://look/check.css")
abstract class CheckPage extends Div implements BeforeEnterObserver, HasDynamicTitle {
    final Words texts = Words.of("check");
    private @Nullable UUID checkId;

    UUID checkId() {
        return java.util.Objects.requireNonNull(checkId);
    }

    /** Draws the screen; called again after each change of it. */
    abstract void draw();

    /** Reads what the address says beside the check. */
    void entered(RouteParameters parameters) {
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("screen"));
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        try {
            checkId = UUID.fromString(event.getRouteParameters().get("check").orElse(""));
            entered(event.getRouteParameters());
            draw();
        } catch (IllegalArgumentException | NotVisible nothing) {
            event.rerouteToError(NotFoundException.class);
        }
    }

    /** Links to the other screens of the check. */
    Component ways() {
        Div ways = new Div(new RouterLink(texts.say("all"), UnitCheckView.class),
                way("blueprint", BlueprintView.class), way("score", ScoreView.class), way("results", ResultsView.class));
        ways.addClassNames("row", "ways");
        ways.getChildren().forEach(link -> link.addClassName("button"));
        return ways;
    }

    private RouterLink way(String key, Class<? extends Component> view) {
        RouterLink link = new RouterLink(texts.say(key), view, of(checkId()));
        if (view.isInstance(this)) {
            link.getElement().setAttribute("aria-current", "page");
        }
        return link;
    }

    /** Address parameters of a check. */
    static RouteParameters of(UUID check, RouteParam... more) {
        RouteParam[] all = java.util.Arrays.copyOf(more, more.length + 1);
        all[more.length] = new RouteParam("check", check.toString());
        return new RouteParameters(all);
    }

    /** A row of a table: a header cell and texts. */
    static NativeTableRow row(String head, String... cells) {
        NativeTableHeaderCell first = new NativeTableHeaderCell(head);
        first.getElement().setAttribute("scope", "row");
        NativeTableRow row = new NativeTableRow(first);
        for (String cell : cells) {
            row.add(new NativeTableCell(cell));
        }
        return row;
    }

    /** A row of column heads. */
    static NativeTableRow heads(String... heads) {
        NativeTableRow row = new NativeTableRow();
        for (String head : heads) {
            NativeTableHeaderCell cell = new NativeTableHeaderCell(new Span(head));
            cell.getElement().setAttribute("scope", "col");
            row.add(cell);
        }
        return row;
    }

    /** A wide thing that scrolls by itself and can be reached by keyboard. */
    static Div scrolled(String label, Component inside) {
        Div scroll = new Div(inside);
        scroll.addClassName("scroll");
        scroll.getElement().setAttribute("tabindex", "0").setAttribute("role", "region")
                .setAttribute("aria-label", label);
        return scroll;
    }
}
