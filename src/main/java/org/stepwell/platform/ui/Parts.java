package org.stepwell.platform.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasComponents;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeLabel;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.dom.Element;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import org.stepwell.core.tier.Tier;

/** Small pieces that screens share. */
public final class Parts {
    private Parts() {
    }

    /** The word for a tier, in the reader's language. */
    public static String word(Tier tier) {
        return Words.of("parts").say("tier." + tier.code());
    }

    /** What stands on the tab of a screen of this name. */
    public static String pageTitle(String screen) {
        return screen + " · Stepwell";
    }

    /** A step as a stair filled from the left, the number beside it. */
    public static Component stair(int step) {
        Span stair = new Span();
        stair.addClassName("sw-stair");
        stair.getElement().setAttribute("data-step", Integer.toString(step)).setAttribute("aria-hidden", "true");
        return new Span(stair, new Span(" " + step));
    }

    /** A tier by its word and its place in the row of three. */
    public static Component tier(Tier tier) {
        return tier(tier, tier);
    }

    /** The tier in force by its place in the row of three, and the place a suggestion points to. */
    public static Component tier(Tier tier, Tier suggested) {
        Div row = new Div();
        row.addClassName("places");
        for (Tier each : Tier.values()) {
            Span place = new Span(word(each));
            if (each == tier) {
                place.getElement().setAttribute("aria-current", "true");
            } else if (each == suggested) {
                place.addClassName("suggested");
            }
            row.add(place);
        }
        return row;
    }

    /** A button of the house. */
    public static NativeButton button(String text, Runnable pressed) {
        NativeButton button = new NativeButton(text, event -> pressed.run());
        button.addClassName("button");
        return button;
    }

    /** The way to another screen, as a button. */
    public static Anchor link(String path, String words) {
        Anchor link = new Anchor(path, words);
        link.addClassName("button");
        return link;
    }

    /** The way to a page outside the screens, such as a file or the Table, as a button. */
    public static Anchor outside(String path, String words) {
        Anchor link = link(path, words);
        link.setRouterIgnore(true);
        return link;
    }

    /** The way to a file that opens in a tab of its own, as a button. */
    public static Anchor sheetOut(String path, String words) {
        Anchor link = outside(path, words);
        link.setTarget("_blank");
        return link;
    }

    /** Address of something about a child, whose id of the school's own may hold any letter. */
    public static String ofChild(String schoolKey, String rest) {
        return "/api/children/" + URLEncoder.encode(schoolKey, StandardCharsets.UTF_8).replace("+", "%20") + "/" + rest;
    }

    /** A button that stays pressed until it is pressed again; each change is told. */
    public static NativeButton toggle(String words, boolean on, Consumer<Boolean> changed) {
        NativeButton toggle = new NativeButton(words);
        toggle.addClassName("button");
        boolean[] pressed = {on};
        toggle.getElement().setAttribute("aria-pressed", String.valueOf(on));
        toggle.addClickListener(press -> {
            pressed[0] = !pressed[0];
            toggle.getElement().setAttribute("aria-pressed", String.valueOf(pressed[0]));
            changed.accept(pressed[0]);
        });
        return toggle;
    }

    /** A paragraph in the second voice. */
    public static Paragraph soft(String text) {
        Paragraph paragraph = new Paragraph(text);
        paragraph.addClassName("soft");
        return paragraph;
    }

    /** A sheet of paper with things on it. */
    public static Div sheet(Component... inside) {
        Div sheet = new Div(inside);
        sheet.addClassName("sheet");
        return sheet;
    }

    /** A labelled line of text; the consumer gets each change. */
    public static Div input(String label, String type, String value, Consumer<String> changed) {
        Element input = new Element("input");
        input.setAttribute("type", type).setProperty("value", value);
        input.addPropertyChangeListener("value", "change", event -> changed.accept(
                String.valueOf(event.getValue() == null ? "" : event.getValue())));
        return field(label, input);
    }

    /** A labelled sheet for a text of many lines; the consumer gets each change. */
    public static Div text(String label, int rows, String value, Consumer<String> changed) {
        Element text = new Element("textarea");
        text.setAttribute("rows", Integer.toString(rows)).setAttribute("spellcheck", "false").setProperty("value", value);
        text.addPropertyChangeListener("value", "change", event -> changed.accept(
                String.valueOf(event.getValue() == null ? "" : event.getValue())));
        return field(label, text);
    }

    /** A labelled choice of few; keys are given back. */
    public static Div choice(String label, Map<String, String> options, String value, Consumer<String> changed) {
        Element select = new Element("select");
        options.forEach((key, words) -> {
            Element option = new Element("option");
            option.setAttribute("value", key).setText(words);
            if (key.equals(value)) {
                option.setAttribute("selected", true);
            }
            select.appendChild(option);
        });
        select.addPropertyChangeListener("value", "change", event -> changed.accept(
                String.valueOf(event.getValue() == null ? "" : event.getValue())));
        return field(label, select);
    }

    private static Div field(String label, Element control) {
        String id = "f" + UUID.randomUUID();
        control.setAttribute("id", id);
        NativeLabel words = new NativeLabel(label);
        words.getElement().setAttribute("for", id);
        Div field = new Div(words);
        field.addClassName("field");
        field.getElement().appendChild(control);
        return field;
    }

    /** A message that is read out; what is wrong and how to mend it. */
    public static void say(Div place, String words) {
        place.removeAll();
        place.getElement().setAttribute("role", "alert");
        Paragraph problem = new Paragraph(words);
        problem.addClassName("problem");
        place.add(problem);
    }

    /** A list of texts. */
    public static void paragraphs(HasComponents place, List<String> texts) {
        texts.forEach(text -> place.add(new Paragraph(text)));
    }
}
