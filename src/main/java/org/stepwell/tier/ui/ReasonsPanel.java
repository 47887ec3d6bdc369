package org.stepwell.tier.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H4;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import java.util.function.Supplier;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.core.wording.SuggestionWording.ConditionWords;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** What stands behind one suggestion: what to do next first, then what it rests on, then the small print. */
class ReasonsPanel extends Div {
    /** So many cautions stand on the card itself. */
    static final int ON_THE_CARD = 2;

    private final transient Words texts = Words.of("tier");

    ReasonsPanel(Suggestion one, Details details, SuggestionWording words) {
        part("why.settle", List.of(words.settle(one, details)));
        part("why.ask", List.of(words.ask(details)));
        part("why.weighty", words.weighty(one, details));
        part("why.fit", words.chances(one));
        List<ConditionWords> conditions = words.conditions(one);
        add(new H4(texts.say("why.measured")));
        Parts.paragraphs(this, conditions.stream().filter(c -> !c.met()).map(this::condition).toList());
        met(conditions.stream().filter(ConditionWords::met).toList());
        List<Caution> rest = one.cautions().stream().skip(ON_THE_CARD).toList();
        part("why.cautions", rest.stream().map(words::caution).toList());
        add(Parts.soft(texts.say("why.versions", one.versions().rules(), one.versions().rulesVersion(),
                one.versions().parametersVersion())));
    }

    /** Folded away; what it costs to find out is found out when somebody opens it. */
    static NativeDetails folded(Suggestion one, Supplier<Details> details, SuggestionWording words) {
        Div inside = new Div();
        NativeDetails why = new NativeDetails(Words.of("tier").say("why"), inside);
        why.addToggleListener(event -> {
            if (event.isOpened() && inside.getChildren().findAny().isEmpty()) {
                inside.add(new ReasonsPanel(one, details.get(), words));
            }
        });
        return why;
    }

    private void part(String heading, List<String> sentences) {
        List<String> said = sentences.stream().filter(s -> !s.isBlank()).toList();
        if (!said.isEmpty()) {
            add(new H4(texts.say(heading)));
            Parts.paragraphs(this, said);
        }
    }

    private void met(List<ConditionWords> conditions) {
        Div inside = new Div();
        conditions.forEach(c -> inside.add(new Paragraph(condition(c))));
        if (!conditions.isEmpty()) {
            add(new NativeDetails(texts.say("why.met.count", conditions.size()), inside));
        }
    }

    private String condition(ConditionWords one) {
        return texts.say(one.met() ? "why.met" : "why.open", one.name(), one.measured(), one.required());
    }
}
