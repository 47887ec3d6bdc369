package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouteParam;
import com.vaadin.flow.router.RouteParameters;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.DecisionLine;
import org.stepwell.tier.TierService;

/** What the rules suggest, with reasons anyone can check; the teacher decides. */
@Route("suggestions")
@Menu(order = 220, title = "tier.suggestions")
@PermitAll
class SuggestionsView extends Div implements HasDynamicTitle {
    private final RosterService roster;
    private final TierService tiers;
    private final Words texts = Words.of("tier");
    /** Says what was done last; a keyboard and a screen reader go on from there, for the screen is drawn afresh. */
    private final Paragraph done = new Paragraph();

    SuggestionsView(RosterService roster, TierService tiers) {
        this.roster = roster;
        this.tiers = tiers;
        done.addClassName("done");
        done.getElement().setAttribute("role", "status").setAttribute("tabindex", "-1");
        draw();
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("suggestions"));
    }

    private void draw() {
        removeAll();
        add(new H1(texts.say("suggestions")), done, Parts.soft(texts.say("suggestions.from")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        Classroom room = ClassChoice.of(classes);
        if (classes.size() > 1) {
            add(ClassChoice.line(classes));
        }
        ClassPicture picture = tiers.picture(room.classId());
        if (picture.children().isEmpty()) {
            add(ClassChoice.noChildren());
            return;
        }
        if (picture.unitTitle().isEmpty()) {
            add(Parts.soft(texts.say("suggestions.no-unit")));
            return;
        }
        SuggestionWording words = new SuggestionWording(Words.language(), picture.progression());
        picture.review().dips().forEach(dip -> add(Parts.sheet(new Paragraph(words.dip(dip)))));
        Map<String, List<OneChild>> parts = picture.children().stream()
                .sorted(Comparator.comparing(c -> c.row().label()))
                .collect(Collectors.groupingBy(c -> part(picture, c)));
        section(texts.say("suggestions.moves"), parts.getOrDefault("moves", List.of()), room, picture, words, true);
        if (parts.containsKey("decided")) {
            section(texts.say("suggestions.decided"), parts.get("decided"), room, picture, words, true);
        }
        section(texts.say("suggestions.not-enough"), parts.getOrDefault("few", List.of()), room, picture, words, true);
        section(texts.say("suggestions.stay"), parts.getOrDefault("stay", List.of()), room, picture, words, false);
        RouterLink whatIf = new RouterLink(Words.of("whatif").say("what-if.link"), WhatIfView.class);
        whatIf.addClassName("plain");
        add(whatIf);
    }

    private static String part(ClassPicture picture, OneChild child) {
        if (child.decided(picture.day())) {
            return "decided";
        }
        return switch (of(picture, child).verdict()) {
            case MOVE -> "moves";
            case NOT_ENOUGH -> "few";
            case STAY -> "stay";
        };
    }

    private void section(String title, List<OneChild> children, Classroom room, ClassPicture picture,
            SuggestionWording words, boolean open) {
        Div cards = new Div();
        cards.addClassName("cards");
        children.forEach(child -> cards.add(card(room, picture, child, words)));
        if (children.isEmpty()) {
            cards.add(Parts.soft(texts.say("suggestions.nobody")));
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
        Div card = Parts.sheet(heading(name), Parts.tier(one.current(),
                one.verdict() == Verdict.MOVE ? one.suggested() : one.current()));
        if (child.decided(picture.day())) {
            DecisionLine line = tiers.decisions(child.row().childId()).getLast();
            Paragraph decided = new Paragraph(texts.say(line.from() == line.to() ? "decided.kept" : "decided.moved",
                    Parts.word(line.to()), Parts.word(line.from()), line.by(), line.reason()).strip());
            decided.addClassName("decided");
            card.add(decided);
        }
        Paragraph headline = new Paragraph(words.headline(one) + ".");
        headline.addClassName("lead");
        if (one.verdict() == Verdict.MOVE) {
            card.add(headline);
        }
        card.add(new Paragraph(words.reason(one)));
        if (one.verdict() == Verdict.NOT_ENOUGH && !words.reason(one).contains(words.missing(one))) {
            card.add(new Paragraph(words.missing(one)));
        }
        one.cautions().stream().limit(ReasonsPanel.ON_THE_CARD).forEach(c -> card.add(caution(words, c)));
        card.add(Parts.soft(one.lastSeen() == null ? texts.say("suggestions.unseen")
                : texts.say("suggestions.looks", one.looks(), one.days(), words.date(one.lastSeen()))));
        card.add(ReasonsPanel.folded(one, () -> tiers.details(room.classId(), child.row().childId()), words),
                decide(room, child, one));
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

    private Component decide(Classroom room, OneChild child, Suggestion one) {
        Div message = new Div();
        Div row = new Div();
        row.addClassNames("row", "choices");
        if (one.verdict() == Verdict.MOVE) {
            NativeButton accept = Parts.button(texts.say("accept", Parts.word(one.suggested())),
                    () -> act(message, room, child, one.suggested(), ""));
            accept.addClassName("strong");
            row.add(accept);
        }
        row.add(Parts.button(texts.say("keep", Parts.word(one.current())),
                () -> act(message, room, child, one.current(), "")));
        Tier[] other = {one.current() == Tier.ON_LEVEL ? Tier.SUPPORT : Tier.ON_LEVEL};
        String[] reason = {""};
        Map<String, String> choices = new LinkedHashMap<>();
        for (Tier tier : Tier.values()) {
            choices.put(tier.code(), Parts.word(tier));
        }
        Div fields = new Div(Parts.choice(texts.say("other.tier"), choices, other[0].code(),
                        key -> other[0] = Tier.of(key)),
                Parts.input(texts.say("other.reason"), "text", "", text -> reason[0] = text),
                Parts.button(texts.say("other.decide"), () -> {
                    boolean suggested = one.verdict() == Verdict.MOVE && other[0] == one.suggested();
                    if (reason[0].isBlank() && !suggested && other[0] != one.current()) {
                        Parts.say(message, texts.say("other.why"));
                    } else {
                        act(message, room, child, other[0], reason[0]);
                    }
                }));
        fields.addClassName("row");
        return new Div(row, new NativeDetails(texts.say("other"), fields), message);
    }

    private void act(Div message, Classroom room, OneChild child, Tier tier, String reason) {
        try {
            tiers.decide(room.classId(), child.row().childId(), tier, reason);
            draw();
            done.setText(texts.say("decided", child.row().label(), Parts.word(tier)));
            done.getElement().callJsFunction("focus");
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, Words.told(wrong));
        } catch (NotVisible closed) {
            Parts.say(message, texts.say("only-adults"));
        }
    }
}
