package org.stepwell.records.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.records.RecordsService;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ui.ChildSection;

/** All records on the child, for a parent who asks to see them. */
@org.springframework.stereotype.Component
class RecordsSection implements ChildSection {
    private final RecordsService records;

    RecordsSection(RecordsService records) {
        this.records = records;
    }

    @Override
    public Optional<Component> on(ChildRow child) {
        if (!records.mayBundle(child.childId())) {
            return Optional.empty();
        }
        Words texts = Words.of("records");
        return Optional.of(Parts.sheet(new H2(texts.say("heading")), Parts.soft(texts.say("about")),
                new Paragraph(texts.say("read-first")), Parts.outside(Parts.ofChild(child.schoolKey(),
                        "records.zip?lang=" + Words.language().code()), texts.say("get"))));
    }
}
