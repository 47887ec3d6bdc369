package org.stepwell.review.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.review.Comparison;
import org.stepwell.review.ComparisonText;
import org.stepwell.review.SealedReview;
import org.stepwell.review.SealedReview.Line;

/** A review as it was closed, with what arrived later beside it. */
class SealedSheet extends Div {
    /** @param compared finds the comparison with the review before when somebody opens it */
    SealedSheet(SealedReview review, Map<UUID, String> labels, Supplier<Optional<Comparison>> compared) {
        Words texts = Words.of("weekly");
        addClassName("sheet");
        add(new H3(texts.say("week", texts.day(review.week()))),
                Parts.soft(texts.say("sealed", review.by(), texts.day(review.on()))));
        if (!review.intact()) {
            Paragraph broken = new Paragraph(texts.say("sealed.broken"));
            broken.addClassName("problem");
            add(broken);
        }
        add(new H3(texts.say("close.changes")));
        if (review.changes().isEmpty()) {
            add(new Paragraph(texts.say("close.none")));
        }
        for (Line line : review.changes()) {
            String change = texts.say("sealed.line", labels.getOrDefault(line.childId(), "…"),
                    Parts.word(line.from()), Parts.word(line.to())) + (line.reason().isEmpty() ? ""
                    : " " + line.reason());
            add(new Paragraph(line.teller().isEmpty() ? change : texts.say("sealed.teller", change, line.teller())));
        }
        String stays = names(review.children().stream().filter(l -> l.from() == l.to()
                && l.until() == null).toList(), labels);
        if (!stays.isEmpty()) {
            add(Parts.soft(texts.say("sealed.stays", stays)));
        }
        String later = review.children().stream().filter(line -> line.until() != null)
                .map(line -> labels.getOrDefault(line.childId(), "…") + " (" + texts.day(line.until()) + ")")
                .collect(Collectors.joining(", "));
        if (!later.isEmpty()) {
            add(new Paragraph(texts.say("sealed.put-off", later)));
        }
        review.later().forEach((child, count) -> add(new Paragraph(texts.say("sealed.later",
                labels.getOrDefault(child, "…"), count))));
        add(compared(labels, compared));
        Anchor pdf = new Anchor("/api/reviews/" + review.reviewId() + "/review.pdf?lang=" + Words.language().code(),
                texts.say("sealed.pdf"));
        pdf.setRouterIgnore(true);
        pdf.setTarget("_blank");
        pdf.addClassName("button");
        Div actions = new Div(pdf);
        actions.addClassName("actions");
        add(actions);
    }

    private static NativeDetails compared(Map<UUID, String> labels, Supplier<Optional<Comparison>> compared) {
        Words texts = Words.of("weekly");
        Div inside = new Div();
        NativeDetails details = new NativeDetails(texts.say("compare.open"), inside);
        details.addToggleListener(event -> {
            if (event.isOpened() && inside.getChildren().findAny().isEmpty()) {
                Optional<Comparison> found = compared.get();
                if (found.isEmpty()) {
                    inside.add(Parts.soft(texts.say("last.none")));
                    return;
                }
                ComparisonText text = new ComparisonText(Words.language(), labels);
                inside.add(new H3(text.title(found.get())));
                text.sentences(found.get()).forEach(sentence -> inside.add(new Paragraph(sentence)));
                inside.add(Parts.soft(texts.say("compare.honest")));
            }
        });
        return details;
    }

    private static String names(List<Line> lines, Map<UUID, String> labels) {
        return lines.stream().map(line -> labels.getOrDefault(line.childId(), "…"))
                .collect(Collectors.joining(", "));
    }
}
