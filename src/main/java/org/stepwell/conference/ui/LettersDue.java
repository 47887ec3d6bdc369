package org.stepwell.conference.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.stepwell.conference.HelpLetterService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ui.TodaySection;

/** Families whose child gets extra help and who have no word of it yet. */
@org.springframework.stereotype.Component
class LettersDue implements TodaySection {
    private final HelpLetterService letters;

    LettersDue(HelpLetterService letters) {
        this.letters = letters;
    }

    @Override
    public Optional<Component> of(ClassPicture picture) {
        List<ChildRow> children = picture.children().stream().map(ClassPicture.OneChild::row).toList();
        Set<UUID> without = letters.withoutWord(children.stream().map(ChildRow::childId).toList());
        if (without.isEmpty()) {
            return Optional.empty();
        }
        Words words = Words.of("conference");
        UnorderedList list = new UnorderedList();
        list.addClassName("chips");
        children.stream().filter(child -> without.contains(child.childId())).forEach(child -> {
            Anchor anchor = new Anchor("letter/" + child.childId() + "/" + Words.language().code(), child.label());
            anchor.addClassName("chip");
            list.add(new ListItem(anchor));
        });
        return Optional.of(Parts.sheet(new H2(words.say("letter.title")), new Paragraph(words.say("letter.due")), list));
    }
}
