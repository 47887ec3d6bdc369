package org.stepwell.caseload.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.H2;
import java.util.Optional;
import org.stepwell.caseload.CaseloadService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ui.ChildSection;

/** The thread on the page about a child. */
@org.springframework.stereotype.Component
class ThreadSection implements ChildSection {
    private final CaseloadService caseload;

    ThreadSection(CaseloadService caseload) {
        this.caseload = caseload;
    }

    @Override
    public Optional<Component> on(ChildRow child) {
        return Optional.of(Parts.sheet(new H2(Words.of("caseload").say("thread")), new ThreadPanel(caseload, child, count -> { })));
    }
}
