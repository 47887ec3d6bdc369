package org.stepwell.review.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.tier.ChildState.Dose;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.review.Choice;
import org.stepwell.review.OpenReview;
import org.stepwell.review.SealedReview;
import org.stepwell.tier.ClassPicture.OneChild;

/** One child in a review: what the looks say, what they were, and the choices. */
class ReviewCard extends Div {
    private static final int LOOKS_ON_STRIP = 8;

    /** What a card asks the screen to do. */
    interface Acts {
        /** Takes a choice on this child. */
        void choose(OneChild child, Choice.Kind kind, @Nullable Tier tier, @Nullable LocalDate until, String reason,
                Div message);

        /** Writes a concern down. */
        void concern(OneChild child, String kind, LocalDate on, String words);
    }

    private final OpenReview review;
    private final OneChild child;
    private final Suggestion one;
    private final SuggestionWording words;
    private final Words texts = Words.of("weekly");
    private final Map<String, String> adults;
    private final Acts acts;
    private final Div message = new Div();

    /** @param adults names of adults by the sign-in names that stand in looks */
    ReviewCard(OpenReview review, OneChild child, SuggestionWording words, Map<String, String> adults, Acts acts,
            boolean ownCallFirst) {
        this.adults = adults;
        this.review = review;
        this.child = child;
        this.one = review.suggestion(child);
        this.words = words;
        this.acts = acts;
        addClassName("sheet");
        add(new H3(new Anchor("child/" + child.row().childId(), child.row().label())));
        if (ownCallFirst && review.ownCall(child.row().childId()).isEmpty()) {
            strip();
            ownCall();
            return;
        }
        review.ownCall(child.row().childId()).ifPresent(call ->
                add(Parts.soft(texts.say("own", Parts.word(call.tier())))));
        said();
        choices();
        add(more());
    }

    private void ownCall() {
        Div row = new Div();
        row.addClassName("actions");
        for (Tier tier : Tier.values()) {
            row.add(Parts.button(Parts.word(tier),
                    () -> acts.choose(child, Choice.Kind.OWN_CALL, tier, null, "", message)));
        }
        add(row, message);
    }

    private void said() {
        add(Parts.tier(one.current(), one.verdict() == Verdict.MOVE ? one.suggested() : one.current()));
        if (one.verdict() == Verdict.MOVE) {
            Paragraph headline = new Paragraph(words.headline(one) + ".");
            headline.addClassName("lead");
            add(headline);
        }
        add(new Paragraph(words.reason(one)));
        if (one.verdict() == Verdict.NOT_ENOUGH && !words.missing(one).isEmpty()) {
            add(new Paragraph(words.missing(one)));
        }
        one.cautions().stream().limit(2).forEach(caution -> {
            Paragraph text = new Paragraph(words.caution(caution));
            text.addClassNames("caution", "small");
            add(text);
        });
        Dose dose = child.state().dose();
        if (dose != null) {
            add(Parts.soft(texts.say("dose", dose.given(), dose.planned(), dose.missedBySchool(),
                    dose.missedByChild())));
        }
    }

    private void choices() {
        Div row = new Div();
        row.addClassName("actions");
        if (one.verdict() == Verdict.MOVE) {
            NativeButton accept = Parts.button(texts.say("accept", Parts.word(one.suggested())),
                    () -> acts.choose(child, Choice.Kind.ACCEPT, null, null, "", message));
            accept.addClassName("strong");
            row.add(accept);
        }
        row.add(Parts.button(texts.say("keep", Parts.word(one.current())),
                () -> acts.choose(child, Choice.Kind.KEEP, null, null, "", message)));
        add(row, message, otherChoice());
    }

    private NativeDetails otherChoice() {
        Tier[] tier = {one.current() == Tier.ON_LEVEL ? Tier.SUPPORT : Tier.ON_LEVEL};
        String[] reason = {""};
        String[] until = {review.picture().day().plusWeeks(1).toString()};
        Map<String, String> tiers = new LinkedHashMap<>();
        for (Tier each : Tier.values()) {
            tiers.put(each.code(), Parts.word(each));
        }
        Div other = new Div(Parts.input(texts.say("other.reason"), "text", "", text -> reason[0] = text),
                Parts.choice(texts.say("other.tier"), tiers, tier[0].code(), key -> tier[0] = Tier.of(key)),
                Parts.button(texts.say("other.decide"),
                        () -> acts.choose(child, Choice.Kind.OTHER, tier[0], null, reason[0], message)));
        other.addClassName("row");
        Div later = new Div(Parts.input(texts.say("defer.until"), "date", until[0], day -> until[0] = day),
                Parts.button(texts.say("defer.decide"), () -> acts.choose(child, Choice.Kind.DEFER, null,
                        day(until[0]), reason[0], message)));
        later.addClassName("row");
        return new NativeDetails(texts.say("other"), new Div(other, later));
    }

    private static @Nullable LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException noDay) {
            return null;
        }
    }

    private NativeDetails more() {
        Div inside = new Div();
        NativeDetails more = new NativeDetails(texts.say("more"), inside);
        more.addToggleListener(event -> {
            if (event.isOpened() && inside.getChildren().findAny().isEmpty()) {
                inside.add(Parts.soft(review.lastLine(child.row().childId())
                        .map(line -> texts.say("last", Parts.word(line.to())
                                + (line.reason().isEmpty() ? "" : "; " + line.reason())))
                        .orElseGet(() -> texts.say("last.none"))));
                review.lastLine(child.row().childId()).ifPresent(line -> since(inside, line));
                Parts.paragraphs(inside, words.chances(one));
                inside.add(looks(), concern());
            }
        });
        return more;
    }

    private void since(Div inside, SealedReview.Line last) {
        List<Look> added = review.picture().looks().stream().filter(look -> look.child().equals(child.row().schoolKey())
                && look.step() != null && !look.withdrawn() && !last.lookIds().contains(look.id())).toList();
        inside.add(Parts.soft(texts.say("last.said", texts.say("compare.verdict." + last.verdict(),
                Parts.word(last.suggested())), added.size())));
    }

    private void strip() {
        add(looks());
    }

    private Div looks() {
        Div place = new Div(new Span(texts.say("strip")));
        List<Look> last = review.picture().looks().stream()
                .filter(look -> look.child().equals(child.row().schoolKey()) && look.step() != null
                        && !look.withdrawn())
                .sorted(Comparator.comparing(Look::observedAt).reversed()).limit(LOOKS_ON_STRIP).toList();
        if (last.isEmpty()) {
            place.add(Parts.soft(texts.say("strip.none")));
            return place;
        }
        UnorderedList list = new UnorderedList();
        list.addClassName("looks");
        last.forEach(look -> list.add(new ListItem(new Span(texts.day(look.day())),
                new Span(look.skill() + (look.task() == null ? "" : " · " + look.task())),
                Parts.stair(look.step() == null ? 1 : look.step()), new Span(words.help(look.help())),
                new Span(adults.getOrDefault(look.observer(), look.observer())))));
        place.add(list);
        return place;
    }

    private Div concern() {
        Map<String, String> kinds = new LinkedHashMap<>();
        for (String kind : List.of("concern", "evaluation_request")) {
            kinds.put(kind, texts.say("concern.kind." + kind));
        }
        String[] kind = {"concern"};
        String[] on = {review.picture().day().toString()};
        String[] said = {""};
        Div answer = new Div();
        Div row = new Div(Parts.choice(texts.say("concern.kind"), kinds, kind[0], key -> kind[0] = key),
                Parts.input(texts.say("concern.day"), "date", on[0], text -> on[0] = text),
                Parts.input(texts.say("concern.words"), "text", "", text -> said[0] = text),
                Parts.button(texts.say("concern.record"), () -> {
                    LocalDate day = day(on[0]);
                    if (day == null || day.isAfter(review.picture().day())) {
                        Parts.say(answer, texts.say("refused.DAY_MISSING"));
                    } else {
                        acts.concern(child, kind[0], day, said[0]);
                        Parts.say(answer, texts.say("concern.done"));
                    }
                }));
        row.addClassName("row");
        return new Div(new H3(texts.say("concern")), row, answer);
    }
}
