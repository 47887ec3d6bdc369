package org.stepwell.plan.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeButton;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Supplier;
import org.stepwell.plan.PlanTemplate;
import org.stepwell.plan.PlanTerms;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** Begins a plan, from what is usual or from a template of the school. */
class BeginPanel extends Div {
    private static final int STEP_TO_BEGIN_AT = 2;

    private final Words texts = Words.of("plan");
    private final Map<String, String> skills;
    private final String due;
    private final String adult;
    private final LocalDate today;
    private final BiConsumer<Boolean, Supplier<PlanTerms>> start;
    private final Div form = new Div();

    /**
     * @param offered templates of the school
     * @param skills titles by code
     * @param due skill the class is on
     * @param adult name of who writes it
     * @param start begins a plan of extra help ({@code true}) or deeper work with the terms written then
     */
    BeginPanel(List<PlanTemplate> offered, Map<String, String> skills, String due, String adult, LocalDate today,
            BiConsumer<Boolean, Supplier<PlanTerms>> start) {
        this.skills = skills;
        this.due = due;
        this.adult = adult;
        this.today = today;
        this.start = start;
        if (!offered.isEmpty()) {
            Map<String, String> names = new LinkedHashMap<>();
            names.put("", texts.say("template.none"));
            offered.forEach(t -> names.put(t.templateId().toString(), t.name()));
            add(Parts.sheet(Parts.choice(texts.say("template.from"), names, "", key -> draw(offered.stream()
                    .filter(t -> t.templateId().toString().equals(key)).findFirst()))));
        }
        add(form);
        draw(Optional.empty());
    }

    private void draw(Optional<PlanTemplate> from) {
        Map<String, String> kinds = new LinkedHashMap<>();
        kinds.put("support", texts.say("support"));
        kinds.put("extension", texts.say("extension"));
        String[] kind = {from.map(PlanTemplate::support).orElse(true) ? "support" : "extension"};
        PlanTerms first = from.map(t -> t.terms(today, skills.containsKey(t.skill()) ? t.skill() : due,
                STEP_TO_BEGIN_AT, adult)).orElseGet(() -> new PlanTerms(today, due, STEP_TO_BEGIN_AT, 4, 80,
                        today.plusWeeks(8), adult, 4, 20, today.plusWeeks(4), ""));
        TermsForm fields = new TermsForm(first, skills, true);
        NativeButton begin = Parts.button(texts.say("begin"),
                () -> start.accept(kind[0].equals("support"), fields::terms));
        begin.addClassName("strong");
        form.removeAll();
        from.ifPresent(t -> form.add(Parts.soft(texts.say("template.given", t.role()))));
        form.add(Parts.sheet(Parts.choice(texts.say("kind"), kinds, kind[0], key -> kind[0] = key), fields, begin));
    }
}
