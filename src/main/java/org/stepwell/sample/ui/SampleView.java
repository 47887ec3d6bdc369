package org.stepwell.sample.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.UUID;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.AdultService;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.sample.SampleRemoval;

/** What goes when the sample goes, and the button for it; for a teacher or lead of the sample alone. */
@Route("sample")
@PermitAll
class SampleView extends Div implements HasDynamicTitle {
    private final SampleRemoval removal;
    private final Words words = Words.of("sample");

    SampleView(RosterService roster, AdultService adults, SampleRemoval removal) {
        this.removal = removal;
        add(new H1(words.say("title")));
        boolean may = roster.inSample() && roster.classes().stream().map(Classroom::classId)
                .anyMatch(room -> mayInvite(adults, room));
        if (!may) {
            add(Parts.soft(words.say("not-yours")));
            return;
        }
        Div ask = new Div();
        add(new Paragraph(words.say("what")), new Paragraph(words.say("for-good")), new Paragraph(words.say("after")),
                ask);
        offer(ask);
        add(new Paragraph(new Anchor("files", words.say("back"))));
    }

    private static boolean mayInvite(AdultService adults, UUID room) {
        try {
            return !adults.mayInvite(room).isEmpty();
        } catch (NotVisible notWhole) {
            return false;
        }
    }

    private void offer(Div ask) {
        ask.removeAll();
        ask.add(Parts.button(words.say("first"), () -> {
            ask.removeAll();
            Paragraph really = new Paragraph(words.say("really"));
            really.getElement().setAttribute("role", "alert");
            Div row = new Div(Parts.button(words.say("yes"), () -> {
                removal.remove();
                UI.getCurrent().getPage().setLocation("/login");
            }), Parts.button(words.say("no"), () -> offer(ask)));
            row.addClassName("row");
            ask.add(really, row);
        }));
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(words.say("title"));
    }
}
