package org.stepwell.report.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import java.util.Optional;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ui.ChildSection;

/** The way to the report on the page about a child. */
@org.springframework.stereotype.Component
class ReportSection implements ChildSection {
    @Override
    public Optional<Component> on(ChildRow child) {
        Words texts = Words.of("report");
        Div row = new Div(Parts.sheetOut(Parts.ofChild(child.schoolKey(), "report.pdf?lang=" + Words.language().code()),
                texts.say("print")), Parts.outside(Parts.ofChild(child.schoolKey(), "report.csv"), texts.say("csv")));
        row.addClassName("row");
        return Optional.of(Parts.sheet(new H2(texts.say("title")), Parts.soft(texts.say("kind")), row));
    }
}
