package org.stepwell.caseload.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalDate;
import java.util.UUID;
import java.util.function.Consumer;
import org.stepwell.caseload.CaseloadService;
import org.stepwell.caseload.CaseloadService.Card;
import org.stepwell.core.plan.PlannedSessions.Outcome;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.plan.Plan;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** A shared child: what it works on, the words used for it, the last looks, the plan, the thread. */
class CaseloadCard extends Div {
    private final Words texts = Words.of("caseload");
    private final Words plan = Words.of("plan");
    private final Card card;
    private final LocalDate today;
    private final PlanService plans;
    private final Consumer<String> said;

    CaseloadCard(Card card, LocalDate today, SuggestionWording words, PlanService plans, CaseloadService caseload,
            Consumer<String> said) {
        this.card = card;
        this.today = today;
        this.plans = plans;
        this.said = said;
        addClassName("sheet");
        Anchor name = new Anchor("child/" + card.child().childId(), card.child().label());
        name.getElement().setAttribute("aria-label", texts.say("open", card.child().label()));
        add(new H2(name), Parts.soft(texts.say("in", card.room().name(), texts.day(card.sharing().until()),
                card.sharing().reason())));
        focus();
        looks(words);
        plan();
        NativeDetails thread = new NativeDetails();
        thread.setContent(new ThreadPanel(caseload, card.child(),
                count -> thread.setSummaryText(texts.say("thread") + " (" + count + ")")));
        add(thread);
    }

    private void focus() {
        var focus = card.focus();
        if (focus == null) {
            return;
        }
        var estimate = card.estimate();
        add(new Paragraph(texts.say("focus", focus.code() + " " + focus.title()) + " "
                + (estimate == null || !estimate.seen() ? texts.say("not-seen", card.expected())
                        : card.expected() == 0 ? texts.say("not-expected", estimate.step())
                                : texts.say("stands", estimate.step(), card.expected()))));
        UnorderedList phrases = new UnorderedList();
        card.phrases().forEach(p -> phrases.add(new ListItem(p.step() == null ? p.text()
                : texts.say("words.step", p.step(), p.text()))));
        add(new NativeDetails(texts.say("words"), phrases));
    }

    private void looks(SuggestionWording words) {
        UnorderedList looks = new UnorderedList();
        card.looks().forEach(look -> looks.add(new ListItem(texts.say("look", texts.day(look.day()), look.skill()
                + (look.task() == null ? "" : " · " + look.task()), look.step() == null ? 0 : look.step(),
                words.help(look.help())))));
        add(new Paragraph(texts.say(card.looks().isEmpty() ? "looks.none" : "looks")), looks);
    }

    private void plan() {
        Plan running = card.plan();
        if (running == null) {
            add(new Paragraph(texts.say(card.sharing().plan() ? "plan.none" : "plan.closed")));
            return;
        }
        PlanTerms now = running.on(today);
        add(new Paragraph(texts.say("plan", now.perWeek(), now.minutes(), texts.day(now.reviewOn()))
                + (card.dose() == null ? "" : " " + texts.say("plan.dose", card.dose().given(), card.dose().planned()))));
        if (running.missedTwiceRunning()) {
            Paragraph twice = new Paragraph(texts.say("plan.twice"));
            twice.addClassName("caution");
            add(twice);
        }
        NativeButton given = Parts.button(texts.say("session.given", now.minutes()),
                () -> log(running, Outcome.GIVEN, now.minutes()));
        given.addClassName("strong");
        Div missed = new Div();
        missed.addClassName("actions");
        for (Outcome why : Outcome.values()) {
            if (why != Outcome.GIVEN) {
                missed.add(Parts.button(plan.say("outcome." + why.code()), () -> log(running, why, 0)));
            }
        }
        add(given, new NativeDetails(texts.say("session.missed"), missed));
    }

    private void log(Plan running, Outcome outcome, int minutes) {
        try {
            plans.log(card.child().childId(), running.planId(), UUID.randomUUID(), today, outcome, minutes, "");
            said.accept(texts.say("session.saved", card.child().label()));
        } catch (PlanService.Refused wrong) {
            said.accept(texts.say("session.refused"));
        }
    }
}
