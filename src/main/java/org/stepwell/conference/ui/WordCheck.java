package org.stepwell.conference.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.ReadingEase;
import org.stepwell.core.wording.home.WordGuard.Found;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** How a page for home reads, and each word that usually stays at school until the adult says that it is meant. */
class WordCheck extends Div {
    private final Words words;
    private final List<String> confirmed = new ArrayList<>();
    private final Paragraph ease = Parts.soft("");
    private final Div open = new Div();
    private Supplier<List<Found>> found = List::of;

    WordCheck(Words words) {
        this.words = words;
        add(ease, open);
    }

    /** Begins again with what was confirmed before. */
    void begin(List<String> before) {
        confirmed.clear();
        confirmed.addAll(before);
    }

    /** What the adult said is meant. */
    List<String> confirmed() {
        return List.copyOf(confirmed);
    }

    /** Looks at a text; {@code finds} is asked again whenever a word was confirmed. */
    void look(String text, Language language, Supplier<List<Found>> finds) {
        found = finds;
        ReadingEase read = ReadingEase.of(text, language);
        ease.setText(read.words() == 0 ? "" : language == Language.SPANISH
                ? words.say("ease-es", read.szigrisztPazos())
                : words.say("ease-en", Math.max(0, read.fleschKincaidGrade())));
        ask();
    }

    private void ask() {
        open.removeAll();
        found.get().stream().filter(one -> !confirmed.contains(one.text()))
                .map(one -> new Found(one.text(), one.kind(), 0)).distinct().forEach(this::ask);
    }

    private void ask(Found one) {
        Div row = new Div(new Paragraph(text(one)), Parts.button(words.say("meant"), () -> {
            confirmed.add(one.text());
            ask();
        }));
        row.addClassName("sheet");
        open.add(row);
    }

    /** What is to be said about a found word. */
    String text(Found one) {
        return words.say("found." + one.kind().name(), one.text());
    }
}
