package org.stepwell.conference.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import java.time.LocalDate;
import java.util.Optional;
import org.stepwell.conference.FamilyTalk;
import org.stepwell.conference.FamilyTalkService;
import org.stepwell.conference.HomeNoteService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ui.ChildSection;

/** Talks with the family on the page about a child. */
@org.springframework.stereotype.Component
class TalkSection implements ChildSection {
    private final FamilyTalkService talks;
    private final HomeNoteService notes;
    private final CurrentAdult current;

    TalkSection(FamilyTalkService talks, HomeNoteService notes, CurrentAdult current) {
        this.talks = talks;
        this.notes = notes;
        this.current = current;
    }

    @Override
    public Optional<Component> on(ChildRow child) {
        if (!notes.mayRead(child.childId())) {
            return Optional.empty();
        }
        Div sheet = Parts.sheet();
        draw(sheet, child);
        return Optional.of(sheet);
    }

    private void draw(Div sheet, ChildRow child) {
        sheet.removeAll();
        Words words = Words.of("conference");
        LocalDate today = current.today();
        boolean writes = talks.mayWrite(child.childId());
        sheet.add(new H2(words.say("talk.title")));
        for (FamilyTalk talk : talks.talks(child.childId())) {
            sheet.add(told(sheet, child, talk, words, writes));
        }
        if (writes) {
            sheet.add(new NativeDetails(words.say("talk.add"), new TalkForm(talks, child.childId(), today, words,
                    () -> draw(sheet, child))), Parts.link("talk/" + child.childId() + "/" + Words.language().code(),
                    words.say("talk.screen")));
        } else if (sheet.getComponentCount() == 1) {
            sheet.add(Parts.soft(words.say("talk.none")));
        }
    }

    private Div told(Div sheet, ChildRow child, FamilyTalk talk, Words words, boolean writes) {
        Div one = new Div(Parts.soft(words.say("talk.when", words.day(talk.on()), talk.by())));
        if (!talk.said().isEmpty()) {
            one.add(new Paragraph(words.say("talk.said.told", talk.said())));
        }
        if (!talk.agreed().isEmpty()) {
            one.add(new Paragraph(words.say("talk.agreed.told", talk.agreed())));
        }
        LocalDate again = talk.againOn();
        if (again != null) {
            one.add(new Paragraph(words.say("talk.again.told", words.day(again))));
        }
        if (again != null && writes) {
            Div actions = new Div(
                    Parts.button(words.say("talk.done"), () -> settle(sheet, child, talk, null)),
                    Parts.button(words.say("talk.week"), () -> settle(sheet, child, talk, current.today().plusWeeks(1))));
            actions.addClassName("actions");
            one.add(actions);
        }
        return one;
    }

    private void settle(Div sheet, ChildRow child, FamilyTalk talk, @org.jspecify.annotations.Nullable LocalDate again) {
        talks.settle(child.childId(), talk.talkId(), talk.steps(), again);
        draw(sheet, child);
    }
}
