package org.stepwell.plan.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import java.util.UUID;
import java.util.function.BiConsumer;
import org.stepwell.plan.PlanTemplate;
import org.stepwell.plan.PlanTemplateService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** Templates of the school: keep this plan's frame as one, give one another name, offer one no longer. */
class TemplatesPanel extends Div {
    private final Words texts = Words.of("plan");
    private final PlanTemplateService templates;
    private final BiConsumer<Runnable, String> act;

    /** @param act does a change, draws the screen anew, and says what was done or what was wrong with it */
    TemplatesPanel(PlanTemplateService templates, BiConsumer<Runnable, String> act) {
        this.templates = templates;
        this.act = act;
    }

    /** A fold to keep a plan's frame. */
    NativeDetails keep(UUID childId, UUID planId) {
        String[] name = {""};
        String[] role = {""};
        Div fields = new Div(Parts.input(texts.say("template.name"), "text", "", text -> name[0] = text),
                Parts.input(texts.say("template.role"), "text", "", text -> role[0] = text),
                Parts.button(texts.say("template.do"),
                        () -> act.accept(() -> templates.save(childId, planId, name[0], role[0]),
                                texts.say("template.done", name[0].strip()))));
        fields.addClassName("row");
        return new NativeDetails(texts.say("template.keep"), new Div(Parts.soft(texts.say("template.help")), fields));
    }

    /** A fold to keep the list in order; nothing while there is none. */
    TemplatesPanel list() {
        List<PlanTemplate> all = templates.templates();
        if (!all.isEmpty()) {
            Div inside = new Div();
            all.forEach(template -> inside.add(row(template)));
            add(new NativeDetails(texts.say("templates", all.size()), inside));
        }
        return this;
    }

    private Div row(PlanTemplate template) {
        String[] name = {template.name()};
        NativeButton retire = Parts.button(texts.say("template.retire"),
                () -> act.accept(() -> templates.retire(template.templateId(), template.version()),
                        texts.say("template.retired", template.name())));
        retire.getElement().setAttribute("aria-label", texts.say("template.retire") + ": " + template.name());
        NativeButton rename = Parts.button(texts.say("template.rename"),
                () -> act.accept(() -> templates.rename(template.templateId(), template.version(), name[0]),
                        texts.say("template.done", name[0].strip())));
        rename.getElement().setAttribute("aria-label", texts.say("template.rename") + ": " + template.name());
        Div fields = new Div(Parts.input(texts.say("template.name") + ": " + template.name(), "text", template.name(),
                text -> name[0] = text), rename, retire);
        fields.addClassName("row");
        Div sheet = new Div(new Paragraph(texts.say("template.line", template.name(), template.skill(), template.step(),
                template.perWeek(), template.minutes(), template.role())), fields);
        sheet.addClassName("sheet");
        return sheet;
    }
}
