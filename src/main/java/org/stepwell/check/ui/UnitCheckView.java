package org.stepwell.check.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.stepwell.check.CheckLine;
import org.stepwell.check.CheckService;
import org.stepwell.check.CheckSheet;
import org.stepwell.core.check.BlueprintNote;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;

/** The checks of a class, and a new one from the skills of the unit. */
@Route("unit-check")
@Menu(order = 330, title = "check.screen")
@PermitAll
class UnitCheckView extends Div implements HasDynamicTitle {
    private final Words texts = Words.of("check");
    private final CheckService checks;
    private final CurrentAdult current;
    private final Div problem = new Div();

    UnitCheckView(RosterService roster, CheckService checks, CurrentAdult current) {
        this.checks = checks;
        this.current = current;
        add(new H1(texts.say("screen")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        add(ClassChoice.line(classes));
        UUID classId = ClassChoice.of(classes).classId();
        try {
            List<CheckLine> lines = checks.checks(classId);
            add(Parts.soft(texts.say("about")));
            lines.forEach(line -> add(card(line)));
            add(fresh(classId));
        } catch (NotVisible closed) {
            add(Parts.soft(texts.say("only-adults")));
        }
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("screen"));
    }

    private Component card(CheckLine line) {
        CheckSheet sheet = checks.sheet(line.checkId());
        Div ways = new Div(new RouterLink(texts.say("score"), ScoreView.class, CheckPage.of(line.checkId())),
                new RouterLink(texts.say("results"), ResultsView.class, CheckPage.of(line.checkId())),
                new RouterLink(texts.say("blueprint"), BlueprintView.class, CheckPage.of(line.checkId())));
        ways.addClassName("row");
        ways.getChildren().forEach(link -> link.addClassName("button"));
        return Parts.sheet(new H2(line.title()), Parts.soft(texts.say("card", line.unitTitle(),
                texts.day(line.heldOn()), sheet.items().size(), sheet.sat().size(), sheet.children().size())),
                Parts.soft(texts.say(line.counted() ? "card.counted" : "card.open")), ways);
    }

    private Component fresh(UUID classId) {
        Map<String, Integer> skills = checks.unitSkills(classId);
        Div sheet = Parts.sheet(new H2(texts.say("new")));
        if (skills.isEmpty()) {
            sheet.add(Parts.soft(texts.say("new.no-unit")));
            return sheet;
        }
        String[] title = {texts.say("new.title.first")};
        String[] day = {current.today().toString()};
        Div fields = new Div(Parts.input(texts.say("new.title"), "text", title[0], text -> title[0] = text),
                Parts.input(texts.say("new.day"), "date", day[0], text -> day[0] = text),
                Parts.button(texts.say("new.make"), () -> make(classId, title[0], day[0], skills)));
        fields.addClassName("row");
        sheet.add(new H3(texts.say("new.from", String.join(", ", skills.keySet()))), fields, problem);
        return sheet;
    }

    private void make(UUID classId, String title, String day, Map<String, Integer> skills) {
        try {
            UUID check = checks.create(classId, title, LocalDate.parse(day), BlueprintNote.proposal(skills));
            UI.getCurrent().navigate(BlueprintView.class, CheckPage.of(check));
        } catch (DateTimeException wrong) {
            Parts.say(problem, texts.say("day.wrong"));
        } catch (IllegalArgumentException wrong) {
            Parts.say(problem, Words.told(wrong));
        }
    }
}
