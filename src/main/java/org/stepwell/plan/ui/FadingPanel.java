package org.stepwell.plan.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.time.LocalDate;
import java.util.function.Consumer;
import org.stepwell.core.plan.Fading;
import org.stepwell.plan.Plan;
import org.stepwell.plan.PlanTerms;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** How far the goal is shown without help, and the next step down, or back up, in one tap. */
class FadingPanel extends Div {
    private static final int WEEKS_OF_A_STEP = 2;
    private static final int WEEKS_OF_A_GOAL = 8;

    private final Words texts = Words.of("plan");

    /** @param change takes the terms of the next step; {@code null} where the plan may not be changed */
    FadingPanel(Plan plan, Fading standing, LocalDate today,
            @org.jspecify.annotations.Nullable Consumer<PlanTerms> change) {
        PlanTerms now = plan.on(today);
        add(new Paragraph(texts.say("standing", standing.looks(), standing.shown(), now.step(), standing.days(),
                texts.day(now.from()))));
        if (standing.reached(now.share())) {
            add(new Paragraph(texts.say(Fading.fewer(now.perWeek()) == 0 ? "fade.end" : "fade.ready")));
        }
        if (change == null || !today.isAfter(plan.phases().getLast().from())) {
            return;
        }
        Div row = new Div();
        row.addClassName("actions");
        int fewer = Fading.fewer(now.perWeek());
        if (fewer > 0 && standing.reached(now.share())) {
            row.add(Parts.button(texts.say("fade.do", fewer), () -> change.accept(terms(now, today, fewer))));
        }
        int before = plan.phases().size() < 2 ? 0 : plan.phases().get(plan.phases().size() - 2).perWeek();
        if (before > now.perWeek()) {
            row.add(Parts.button(texts.say("fade.back", before), () -> change.accept(terms(now, today, before))));
        }
        if (row.getComponentCount() > 0) {
            add(row);
        }
    }

    private static PlanTerms terms(PlanTerms now, LocalDate today, int perWeek) {
        return new PlanTerms(today, now.skill(), now.start(), now.step(), now.share(),
                now.by().isAfter(today) ? now.by() : today.plusWeeks(WEEKS_OF_A_GOAL), now.givenBy(), perWeek,
                now.minutes(), today.plusWeeks(WEEKS_OF_A_STEP), now.activity());
    }
}
