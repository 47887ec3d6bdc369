package org.stepwell.tier.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.tier.WhatIfService;

/** Other rules or thresholds over this class's own history; changes nothing. */
@Route("what-if")
@PermitAll
class WhatIfView extends Div implements HasDynamicTitle {
    private final transient Words texts = Words.of("whatif");

    WhatIfView(RosterService roster, ProgressionService progressions, WhatIfService whatIf) {
        add(new H1(texts.say("what-if")), Parts.soft(texts.say("what-if.about")));
        RouterLink back = new RouterLink(Words.of("tier").say("suggestions"), SuggestionsView.class);
        back.addClassName("plain");
        add(back);
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        Classroom room = ClassChoice.of(classes);
        if (classes.size() > 1) {
            add(ClassChoice.line(classes));
        }
        add(new WhatIfPanel(new SuggestionWording(Words.language(), progressions.ofClass(room.classId())),
                (rules, weekly) -> whatIf.tried(room.classId(), rules, weekly)));
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("what-if"));
    }
}
