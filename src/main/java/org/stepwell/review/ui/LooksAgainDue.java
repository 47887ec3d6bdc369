package org.stepwell.review.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.List;
import java.util.Optional;
import org.stepwell.plan.AfterHelpService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ui.TodaySection;

/** Children whose help ended two or four weeks ago and who were not looked at without help since. */
@org.springframework.stereotype.Component
class LooksAgainDue implements TodaySection {
    private final AfterHelpService after;

    LooksAgainDue(AfterHelpService after) {
        this.after = after;
    }

    @Override
    public Optional<Component> of(ClassPicture picture) {
        if (picture.children().isEmpty()) {
            return Optional.empty();
        }
        List<AfterHelpService.Due> due = after.due(picture.children().getFirst().row().classId());
        if (due.isEmpty()) {
            return Optional.empty();
        }
        Words words = Words.of("today");
        UnorderedList list = new UnorderedList();
        list.addClassName("chips");
        due.forEach(each -> {
            Anchor anchor = new Anchor("plan/" + each.child().childId(), words.say("again.child", each.child().label(),
                    each.skill(), words.day(each.since())));
            anchor.addClassName("chip");
            list.add(new ListItem(anchor));
        });
        return Optional.of(Parts.sheet(new H2(words.say("again")), new Paragraph(words.say("again.help")), list));
    }
}
