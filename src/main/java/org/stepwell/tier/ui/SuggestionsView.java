package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouteParam;
import com.vaadin.flow.router.RouteParameters;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.ui.Parts;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;

/** What the rules suggest, with reasons anyone can check; the teacher decides. */
@Route("suggestions")
@PageTitle("Suggestions · Stepwell")
@Menu(order = 3, title = "Suggestions")
@PermitAll
class SuggestionsView extends Div {
    private final RosterService roster;
    private final TierService tiers;

    SuggestionsView(RosterService roster, TierService tiers) {
        this.roster = roster;
        this.tiers = tiers;
        draw();
    }

    private void draw() {
        removeAll();
        add(new H1("Suggestions"));
        add(Parts.soft("From a limited number of looks; you decide. Tried on simulated classes, not validated with "
                + "children. A tier is the support that runs now in this unit, never a label."));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(Parts.soft("No class is shared with you yet."));
            return;
        }
        Classroom room = ClassChoice.of(classes);
        if (classes.size() > 1) {
            add(ClassChoice.line(classes));
        }
        ClassPicture picture = tiers.picture(room.classId());
        SuggestionWording words = new SuggestionWording(Language.ENGLISH, picture.progression());
        picture.review().dips().forEach(dip -> add(Parts.sheet(new Paragraph(words.dip(dip)))));
        section("Moves suggested", Verdict.MOVE, room, picture, words, true);
        section("Not enough seen yet", Verdict.NOT_ENOUGH, room, picture, words, true);
        section("Going on as now", Verdict.STAY, room, picture, words, false);
    }

    private void section(String title, Verdict verdict, Classroom room, ClassPicture picture, SuggestionWording words,
            boolean open) {
        List<OneChild> children = picture.children().stream()
                .filter(c -> of(picture, c).verdict() == verdict)
                .sorted(Comparator.comparing(c -> c.row().label())).toList();
        Div cards = new Div();
        cards.addClassName("cards");
        children.forEach(child -> cards.add(card(room, picture, child, words)));
        if (children.isEmpty()) {
            cards.add(Parts.soft("Nobody today."));
        }
        String heading = title + " (" + children.size() + ")";
        if (open) {
            add(new H2(heading), cards);
        } else {
            NativeDetails rest = new NativeDetails(heading, cards);
            add(rest);
        }
    }

    private static Suggestion of(ClassPicture picture, OneChild child) {
        return picture.review().of(child.row().schoolKey()).orElseThrow(NotVisible::new);
    }

    private Component card(Classroom room, ClassPicture picture, OneChild child, SuggestionWording words) {
        Suggestion one = of(picture, child);
        RouterLink name = new RouterLink(child.row().label(), ChildView.class,
                new RouteParameters(new RouteParam("child", child.row().childId().toString())));
        Div card = Parts.sheet(heading(name), Parts.tier(one.current()));
        Paragraph headline = new Paragraph(words.headline(one) + ".");
        headline.getStyle().set("font-weight", "600");
        if (one.verdict() == Verdict.MOVE) {
            card.add(headline);
        }
        card.add(new Paragraph(words.reason(one)));
        if (one.verdict() == Verdict.NOT_ENOUGH && !words.missing(one).isEmpty()) {
            card.add(new Paragraph(words.missing(one)));
        }
        one.cautions().stream().limit(2).forEach(c -> card.add(caution(words, c)));
        card.add(Parts.soft(one.looks() + " looks on " + one.days() + " days"
                + (one.lastSeen() == null ? "" : ", the newest on " + words.date(one.lastSeen()))));
        card.add(why(room, child, one, words), decide(room, child, one));
        return card;
    }

    private static H3 heading(RouterLink name) {
        H3 heading = new H3();
        heading.add(name);
        return heading;
    }

    private static Component caution(SuggestionWording words, Caution caution) {
        Paragraph text = new Paragraph(words.caution(caution));
        text.addClassNames("caution", "small");
        return text;
    }

    private Component why(Classroom room, OneChild child, Suggestion one, SuggestionWording words) {
        Div inside = new Div();
        NativeDetails why = new NativeDetails("Why, and what would settle it", inside);
        why.addToggleListener(event -> {
            if (event.isOpened() && inside.getChildren().findAny().isEmpty()) {
                fill(inside, tiers.details(room.classId(), child.row().childId()), one, words);
            }
        });
        return why;
    }

    private static void fill(Div inside, Details details, Suggestion one, SuggestionWording words) {
        inside.add(new H3("Measured against required"));
        words.conditions(one).forEach(c -> inside.add(new Paragraph((c.met() ? "Met: " : "Open: ") + c.name() + ": "
                + c.measured() + "; required: " + c.required())));
        inside.add(new H3("How the looks fit"));
        Parts.paragraphs(inside, words.chances(one));
        inside.add(new H3("Looks that mattered most"));
        Parts.paragraphs(inside, words.weighty(one, details));
        inside.add(new H3("What would settle it"), new Paragraph(words.settle(one, details)));
        inside.add(new H3("Ask next at the table"), new Paragraph(words.ask(details)));
        inside.add(new H3("Cautions"));
        one.cautions().forEach(c -> inside.add(caution(words, c)));
        inside.add(Parts.soft("Rules " + one.versions().rules() + " " + one.versions().rulesVersion() + ", parameters "
                + one.versions().parametersVersion()));
    }

    private Component decide(Classroom room, OneChild child, Suggestion one) {
        Div message = new Div();
        Div row = new Div();
        row.addClassName("row");
        if (one.verdict() == Verdict.MOVE) {
            row.add(Parts.button("Accept: " + Parts.word(one.suggested()),
                    () -> act(message, room, child, one.suggested(), "")));
        }
        row.add(Parts.button("Keep " + Parts.word(one.current()), () -> act(message, room, child, one.current(), "")));
        Tier[] other = {one.current() == Tier.ON_LEVEL ? Tier.SUPPORT : Tier.ON_LEVEL};
        String[] reason = {""};
        Map<String, String> choices = new LinkedHashMap<>();
        for (Tier tier : Tier.values()) {
            choices.put(tier.code(), Parts.word(tier));
        }
        Div fields = new Div(Parts.choice("Tier", choices, other[0].code(), key -> other[0] = Tier.of(key)),
                Parts.input("Reason", "text", "", text -> reason[0] = text),
                Parts.button("Decide", () -> act(message, room, child, other[0], reason[0])));
        fields.addClassName("row");
        return new Div(row, new NativeDetails("Another tier, with a reason", fields), message);
    }

    private void act(Div message, Classroom room, OneChild child, Tier tier, String reason) {
        try {
            tiers.decide(room.classId(), child.row().childId(), tier, reason);
            draw();
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, String.valueOf(wrong.getMessage()));
        } catch (NotVisible closed) {
            Parts.say(message, "Only an adult of the class decides.");
        }
    }
}
