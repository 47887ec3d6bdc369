package org.stepwell.caseload.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.UUID;
import java.util.function.IntConsumer;
import org.stepwell.caseload.CaseloadService;
import org.stepwell.caseload.Comment;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;

/** What the adults around a child write to each other. */
class ThreadPanel extends Div {
    private final Words texts = Words.of("caseload");
    private final CaseloadService caseload;
    private final ChildRow child;
    private final Div message = new Div();
    private final Div content = new Div();
    private final IntConsumer counted;

    /** @param counted hears how many comments there are, whenever that changes */
    ThreadPanel(CaseloadService caseload, ChildRow child, IntConsumer counted) {
        this.counted = counted;
        this.caseload = caseload;
        this.child = child;
        add(content, message);
        draw();
    }

    private void draw() {
        content.removeAll();
        List<Comment> comments = caseload.comments(child.childId());
        counted.accept(comments.size());
        content.add(Parts.soft(texts.say("thread.about", child.label())));
        if (comments.isEmpty()) {
            content.add(new Paragraph(texts.say("thread.none")));
        }
        comments.forEach(comment -> {
            Span by = new Span(texts.say("thread.line", comment.by(), texts.moment(comment.at())) + " ");
            by.addClassName("soft");
            Paragraph line = new Paragraph(by, new Span(comment.words()));
            line.addClassName("as-written");
            content.add(line);
        });
        UUID[] id = {UUID.randomUUID()};
        String[] words = {""};
        Div row = new Div(Parts.text(texts.say("thread.write"), 2, "", value -> words[0] = value),
                Parts.button(texts.say("thread.send"), () -> add(id[0], words[0])));
        row.addClassName("row");
        content.add(row);
    }

    private void add(UUID id, String words) {
        try {
            caseload.comment(child.childId(), id, words);
            message.removeAll();
            draw();
        } catch (NotVisible ended) {
            removeAll();
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, Words.told(wrong));
        }
    }
}
