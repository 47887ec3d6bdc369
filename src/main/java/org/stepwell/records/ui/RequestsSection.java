package org.stepwell.records.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import java.util.Optional;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.FamilyRequest;
import org.stepwell.privacy.FamilyRequestService;
import org.stepwell.records.RecordsService;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ui.ChildSection;

/** What the family asked of the records, on the page about a child. */
@org.springframework.stereotype.Component
class RequestsSection implements ChildSection {
    private final FamilyRequestService requests;
    private final RecordsService records;
    private final CurrentAdult current;

    RequestsSection(FamilyRequestService requests, RecordsService records, CurrentAdult current) {
        this.requests = requests;
        this.records = records;
        this.current = current;
    }

    @Override
    public Optional<Component> on(ChildRow child) {
        if (records.mayBundle(child.childId())) {
            return Optional.of(new RequestsPanel(requests, child.childId(), current.today(), () -> { }));
        }
        List<FamilyRequest.Step> statements = requests.statements(child.childId());
        if (statements.isEmpty()) {
            return Optional.empty();
        }
        Words texts = Words.of("records");
        Div sheet = Parts.sheet(new H2(texts.say("statements")));
        statements.forEach(statement -> sheet.add(new Paragraph(texts.say("statement", texts.day(statement.on()),
                statement.words()))));
        return Optional.of(sheet);
    }
}
