package org.stepwell.plan.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.PacingService;
import org.stepwell.plan.Plan;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTemplateService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.RosterService;

class PlanViewTest extends Screens {
    @Autowired
    private RosterService roster;
    @Autowired
    private PacingService pacing;
    @Autowired
    private ProgressionService progressions;
    @Autowired
    private ObservationService observations;
    @Autowired
    private PlanService plans;
    @Autowired
    private PlanTemplateService templates;

    private UUID room() {
        return roster.classes().getFirst().classId();
    }

    private UUID child(String given) {
        if (pacing.unit(room()).isEmpty()) {
            String code = progressions.choices().getFirst();
            progressions.provide(code);
            pacing.startUnit(room(), code, "Tens", today().minusWeeks(12));
        }
        return roster.addChild(room(), null, given, "Lund");
    }

    private Component open(UUID child) {
        UI.getCurrent().navigate("");
        UI.getCurrent().navigate("plan/" + child);
        return (Component) getCurrentView();
    }

    private Component todaysScreen() {
        UI.getCurrent().navigate("");
        UI.getCurrent().refreshCurrentRoute(false);
        return (Component) getCurrentView();
    }

    private void look(UUID child, LocalDate day, int step) {
        observations.record(List.of(new Look(UUID.randomUUID(), OffsetDateTime.parse(day + "T00:00:01-06:00"),
                roster.child(child).schoolKey(), "T05", "17", step, Help.NONE, Kind.TABLE, "x", Set.of(), null, null,
                false, null)), true);
    }

    private PlanTerms terms(LocalDate from, int perWeek) {
        return new PlanTerms(from, "T05", 2, 4, 80, from.plusWeeks(8), "Ms. Ruiz", perWeek, 20, from.plusWeeks(4),
                "ten frames");
    }

    @Test
    void aTemplateOfTheSchoolBeginsAnotherPlanAndHoldsNoChild() {
        signInToAnEmptyClass();
        UUID mo = child("Mo");
        UUID ida = child("Ida");
        Component view = open(mo);
        assertThat(text(view)).doesNotContain("Begin from a template");
        fill(view, "Sessions a week", "3");
        fill(view, "What is done", "ten frames, then Ida builds");
        press(view, "Begin the plan");
        fill(view, "Name of the template", "Tens by frames");
        fill(view, "Given by (role, such as aide; no name)", "aide");
        press(view, "Keep as a template");
        assertThat(text(view)).contains("\"Ida\" is the name of a child here");

        plans.change(mo, plans.running(mo).orElseThrow().planId(), terms(today().plusDays(1), 3));
        plans.end(mo, plans.running(mo).orElseThrow().planId(), today(), "changed", "");
        plans.start(mo, true, terms(today(), 3));
        view = open(mo);
        fill(view, "Name of the template", "Tens by frames");
        fill(view, "Given by (role, such as aide; no name)", "aide");
        press(view, "Keep as a template");

        view = open(ida);
        assertThat(text(view)).contains("Begin from a template of the school", "Tens by frames: T05 to step 4, 3 times a week,"
                + " 20 minutes, given by aide");
        fill(view, "Begin from a template of the school", templates.templates().getFirst().templateId().toString());
        assertThat(text(view)).contains("The template says: given by aide.");
        press(view, "Begin the plan");
        PlanTerms begun = plans.running(ida).orElseThrow().on(today());
        assertThat(begun.perWeek()).isEqualTo(3);
        assertThat(begun.activity()).isEqualTo("ten frames");
        assertThat(begun.by()).isEqualTo(today().plusWeeks(8));
        assertThat(begun.givenBy()).isEqualTo("Ana Ruiz");
    }

    @Test
    void whenTheGoalIsShownHelpFadesStepByStep() {
        signInToAnEmptyClass();
        UUID mo = child("Mo");
        plans.start(mo, true, terms(today().minusWeeks(3), 4));
        look(mo, today().minusDays(8), 4);
        Component view = open(mo);
        assertThat(text(view)).contains("shown in 1 of them, on one day.").doesNotContain("From today, 2 sessions a week");
        look(mo, today().minusDays(6), 4);
        view = open(mo);
        assertThat(text(view)).contains("shown in 2 of them, on 2 days.", "Help may begin to fade");
        press(view, "From today, 2 sessions a week");
        Plan plan = plans.running(mo).orElseThrow();
        assertThat(plan.on(today()).perWeek()).isEqualTo(2);
        assertThat(plan.on(today().minusDays(1)).perWeek()).isEqualTo(4);
    }

    @Test
    void afterHelpEndedTodayAsksForALookAndWhatFellBackIsHelpedAgain() {
        signInToAnEmptyClass();
        UUID mo = child("Mo");
        UUID plan = plans.start(mo, true, terms(today().minusWeeks(10), 4));
        plans.change(mo, plan, terms(today().minusWeeks(5), 2));
        plans.end(mo, plan, today().minusDays(15), "faded", "");
        assertThat(text(todaysScreen())).contains("Does it hold?", "Mo: T05, due since");
        assertThat(text(open(mo))).contains("Look again at T05 without help").doesNotContain("It no longer holds");

        look(mo, today(), 2);
        assertThat(text(todaysScreen())).doesNotContain("Does it hold?");
        Component view = open(mo);
        assertThat(text(view)).contains("step 2 on T05 without help; the goal was step 4.", "It no longer holds");
        press(view, "Begin the help again, 4 times a week");
        assertThat(plans.running(mo).orElseThrow().on(today()).perWeek()).isEqualTo(4);
    }

    @Test
    void aPlanThatEndedForAnotherReasonAsksForNoLook() {
        signInToAnEmptyClass();
        UUID mo = child("Mo");
        UUID plan = plans.start(mo, true, terms(today().minusWeeks(10), 4));
        plans.end(mo, plan, today().minusDays(40), "more_help", "");
        assertThat(text(todaysScreen())).doesNotContain("Does it hold?");
        assertThat(text(open(mo))).contains("More help is asked for").doesNotContain("Look again at");
    }
}
