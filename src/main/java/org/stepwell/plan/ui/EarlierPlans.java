package org.stepwell.plan.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.stepwell.core.plan.LookAgain;
import org.stepwell.plan.AfterHelpService.Ended;
import org.stepwell.plan.Plan;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** Plans that ended: how, what the looks again said, and the way back to the help that worked. */
class EarlierPlans extends Div {
    private final Words texts = Words.of("plan");

    /**
     * @param ended plans with an end, oldest first
     * @param after those whose help ended, with their looks again
     * @param again begins help anew as in this plan; {@code null} where that may not be done
     */
    EarlierPlans(List<Plan> ended, List<Ended> after, @org.jspecify.annotations.Nullable Consumer<Plan> again) {
        add(new H2(texts.say("earlier")));
        for (Plan plan : ended) {
            LocalDate end = Objects.requireNonNull(plan.endedOn());
            add(new Paragraph(texts.say("past", texts.say(plan.support() ? "support" : "extension"),
                    texts.day(plan.startedOn()), texts.day(end), texts.say("ended." + plan.outcome()), plan.words())));
            Optional<Ended> looks = after.stream().filter(a -> a.plan().planId().equals(plan.planId())).findFirst();
            looks.ifPresent(found -> {
                found.looks().forEach(look -> add(Parts.soft(said(plan, look))));
                if (found.fellBack()) {
                    Paragraph back = new Paragraph(texts.say("again.back"));
                    back.addClassName("caution");
                    add(back);
                    if (again != null) {
                        add(Parts.button(texts.say("again.do", plan.phases().getFirst().perWeek()),
                                () -> again.accept(plan)));
                    }
                }
            });
        }
    }

    private String said(Plan plan, LookAgain look) {
        LocalDate made = look.made();
        String skill = plan.phases().getLast().skill();
        return made == null ? texts.say("again.open", texts.day(look.due()), skill)
                : texts.say(look.holds() ? "again.holds" : "again.short", texts.day(made), skill, look.step(),
                        plan.phases().getLast().step());
    }
}
