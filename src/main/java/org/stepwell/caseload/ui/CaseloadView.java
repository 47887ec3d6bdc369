package org.stepwell.caseload.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import org.stepwell.caseload.CaseloadService;
import org.stepwell.caseload.CaseloadService.Card;
import org.stepwell.caseload.ShareService;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.plan.PlanService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;

/** The children shared with me, across classes; for a class of my own, what is shared of it. */
@Route("caseload")
@Menu(order = 240, title = "caseload.title")
@PermitAll
@StyleSheet("context://look/people.css")
class CaseloadView extends Div implements HasDynamicTitle {
    private final Words texts = Words.of("caseload");
    private final CaseloadService caseload;
    private final PlanService plans;
    private final ProgressionService progressions;
    private final CurrentAdult current;
    private final Div message = new Div();
    private final Div cards = new Div();

    CaseloadView(RosterService roster, CaseloadService caseload, ShareService shares, PlanService plans,
            ProgressionService progressions, CurrentAdult current) {
        this.caseload = caseload;
        this.plans = plans;
        this.progressions = progressions;
        this.current = current;
        add(new H1(texts.say("title")));
        List<Classroom> whole = roster.classes().stream().filter(c -> roster.seesWhole(c.classId())).toList();
        if (!whole.isEmpty()) {
            Classroom room = ClassChoice.of(whole);
            add(ClassChoice.line(whole), new SharePanel(shares, room, roster.children(room.classId())));
        }
        add(message, cards);
        draw(whole.isEmpty());
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    private void draw(boolean alone) {
        cards.removeAll();
        List<Card> mine = caseload.mine(Words.language().code());
        if (mine.isEmpty()) {
            if (alone) {
                cards.add(Parts.soft(texts.say("nobody")));
            }
            return;
        }
        Div tables = new Div();
        mine.stream().map(Card::room).distinct().forEach(room -> {
            Anchor table = Parts.outside("/table/?class=" + room.classId(), texts.say("to-table", room.name()));
            table.addClassName("strong");
            tables.add(table);
        });
        tables.addClassName("row");
        Div all = new Div();
        all.addClassName("cards");
        mine.forEach(card -> all.add(new CaseloadCard(card, current.today(), new SuggestionWording(Words.language(),
                progressions.ofClass(card.room().classId())), plans, caseload, said -> {
                    draw(alone);
                    Parts.say(message, said);
                })));
        cards.add(Parts.soft(texts.say("about")), tables, all);
    }
}
