package org.stepwell.check.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.dom.Element;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouteParam;
import com.vaadin.flow.router.RouteParameters;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.stepwell.check.CheckCell;
import org.stepwell.check.CheckService;
import org.stepwell.check.CheckSheet;
import org.stepwell.check.CheckSitting;
import org.stepwell.core.check.Mark;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import tools.jackson.databind.json.JsonMapper;

/** The tap grid of a check; the second entry and what differs; who has still to make it up. */
@Route("unit-check/:check/score/:entry?")
@PermitAll
class ScoreView extends CheckPage {
    private static final List<String> SAID_BY_THE_GRID = List.of("unreachable", "pen", "right", "wrong", "half",
            "not_reached", "cleared", "child", "row", "grid", "restOf", "rest", "absent", "absentOf", "notAsked", "empty",
            "other", "done", "stored", "lost", "sending", "signedOut", "tests", "key", "by", "error", "failed");

    private final CheckService checks;
    private final JsonMapper json;
    private final Div differences = new Div();
    private final Div makeUp = new Div();
    private int entry = 1;

    ScoreView(CheckService checks, JsonMapper json) {
        this.checks = checks;
        this.json = json;
    }

    @Override
    void entered(RouteParameters parameters) {
        entry = parameters.get("entry").filter("2"::equals).isPresent() ? 2 : 1;
    }

    @Override
    void draw() {
        removeAll();
        CheckSheet sheet = checks.sheet(checkId());
        add(new H1(entry == 1 ? sheet.line().title() : texts.say("second.title", sheet.line().title())), ways());
        add(Parts.soft(texts.say(entry == 1 ? "score.about" : "second.about")), keys(), grid());
        Div after = new Div(differences, makeUp);
        add(after);
        if (entry == 1) {
            RouterLink second = new RouterLink(texts.say("second.go"), ScoreView.class,
                    of(checkId(), new RouteParam("entry", "2")));
            second.addClassName("button");
            after.addComponentAsFirst(second);
            drawMakeUp();
        } else {
            after.addComponentAsFirst(Parts.button(texts.say("second.compare"), this::compare));
            differences.removeAll();
            makeUp.removeAll();
        }
    }

    private Component keys() {
        UnorderedList list = new UnorderedList();
        for (String key : List.of("keys.move", "keys.marks", "keys.rest", "keys.pen", "keys.half", "keys.together")) {
            list.add(new ListItem(texts.say(key)));
        }
        list.addClassNames("soft", "small");
        return new NativeDetails(texts.say("keys"), list);
    }

    private Component grid() {
        UI.getCurrent().getPage().addJsModule("context://check/grid.js");
        Map<String, String> words = new LinkedHashMap<>();
        SAID_BY_THE_GRID.forEach(key -> words.put(key, texts.say("grid." + key, "{0}", "{1}", "{2}", "{3}")));
        Element grid = new Element("sw-check-grid");
        grid.setAttribute("check", checkId().toString()).setAttribute("entry", String.valueOf(entry))
                .setAttribute("lang", Words.language() == Language.SPANISH ? "es" : "en")
                .setAttribute("words", json.writeValueAsString(words));
        Div place = new Div();
        place.getElement().appendChild(grid);
        return place;
    }

    private void compare() {
        differences.removeAll();
        CheckSheet sheet = checks.sheet(checkId());
        List<CheckSheet.Difference> found = sheet.differences();
        Div part = Parts.sheet(new H2(texts.say("second.differ")), new Paragraph(texts.say("second.count",
                found.size(), sheet.marked(2))));
        for (CheckSheet.Difference difference : found) {
            Div line = new Div(new Paragraph(texts.say("second.line", difference.child().label(),
                    difference.item().code(), said(difference.first()), said(difference.second()))),
                    Parts.button(texts.say("second.first-holds", said(difference.first())), () -> settle(difference, 2)),
                    Parts.button(texts.say("second.second-holds", said(difference.second())),
                            () -> settle(difference, 1)));
            line.addClassName("row");
            part.add(line);
        }
        differences.add(part);
    }

    private String said(Mark mark) {
        return texts.say(mark == Mark.CLEARED ? "grid.empty" : "grid." + mark.name().toLowerCase(Locale.ROOT));
    }

    /** Writes the mark that holds over the other entry. */
    private void settle(CheckSheet.Difference difference, int over) {
        Mark holds = over == 1 ? difference.second() : difference.first();
        int seen = checks.sheet(checkId()).cells().stream().filter(c -> c.entry() == over
                && c.childId().equals(difference.child().childId()) && c.item().equals(difference.item().code()))
                .mapToInt(CheckCell::number).findFirst().orElse(0);
        checks.mark(checkId(), List.of(new CheckService.Tap(difference.child().childId(), difference.item().code(),
                over, seen, holds, null)));
        compare();
    }

    private void drawMakeUp() {
        makeUp.removeAll();
        CheckSheet sheet = checks.sheet(checkId());
        Div part = Parts.sheet(new H2(texts.say("make-up")), Parts.soft(texts.say("make-up.about")));
        List<ChildRow> waiting = sheet.toMakeUp();
        part.add(new Paragraph(waiting.isEmpty() ? texts.say("make-up.nobody") : texts.say("make-up.wait",
                String.join(", ", waiting.stream().map(ChildRow::label).toList()))));
        Div fields = new Div();
        fields.addClassName("row");
        Div problem = new Div();
        for (ChildRow child : sheet.children()) {
            CheckSitting sitting = sheet.sitting(child.childId());
            if (waiting.contains(child) || sitting.satOn() != null) {
                fields.add(Parts.input(texts.say("make-up.day", child.label()), "date",
                        sitting.satOn() == null ? "" : sitting.satOn().toString(),
                        day -> madeUp(child, day, problem)));
            }
        }
        part.add(fields, problem, Parts.button(texts.say("make-up.again"), this::drawMakeUp));
        makeUp.add(part);
    }

    private void madeUp(ChildRow child, String day, Div problem) {
        try {
            CheckSitting now = checks.sheet(checkId()).sitting(child.childId());
            checks.sit(checkId(), child.childId(), new CheckSitting(false,
                    day.isEmpty() ? null : LocalDate.parse(day), now.accommodation()));
        } catch (DateTimeException wrong) {
            Parts.say(problem, texts.say("day.wrong"));
        }
    }
}
