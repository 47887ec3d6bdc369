package org.stepwell.conference.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.conference.FamilyTalk;
import org.stepwell.conference.FamilyTalkService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ui.TodaySection;

/** What was agreed with families and is to be looked at by today. */
@org.springframework.stereotype.Component
class AgreedDue implements TodaySection {
    private final FamilyTalkService talks;

    AgreedDue(FamilyTalkService talks) {
        this.talks = talks;
    }

    @Override
    public Optional<Component> of(ClassPicture picture) {
        Map<UUID, String> names = picture.children().stream().collect(Collectors.toMap(
                child -> child.row().childId(), child -> child.row().label()));
        List<FamilyTalk> due = talks.due(names.keySet());
        if (due.isEmpty()) {
            return Optional.empty();
        }
        Words words = Words.of("conference");
        Div sheet = Parts.sheet(new H2(words.say("talk.due")));
        due.forEach(talk -> {
            Anchor child = new Anchor("child/" + talk.childId(), names.get(talk.childId()));
            child.addClassName("chip");
            Div row = new Div(child, new Span(" " + (talk.agreed().isEmpty() ? talk.said() : talk.agreed())));
            Div actions = new Div();
            actions.addClassName("actions");
            Runnable gone = () -> {
                sheet.remove(row);
                sheet.setVisible(sheet.getComponentCount() > 1);
            };
            if (talks.mayWrite(talk.childId())) {
                actions.add(Parts.button(words.say("talk.done"), () -> {
                    talks.settle(talk.childId(), talk.talkId(), talk.steps(), null);
                    gone.run();
                }), Parts.button(words.say("talk.week"), () -> {
                    talks.settle(talk.childId(), talk.talkId(), talk.steps(), picture.day().plusWeeks(1));
                    gone.run();
                }));
            }
            row.add(actions);
            sheet.add(row);
        });
        return Optional.of(sheet);
    }
}
