package org.stepwell.conference.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeLabel;
import com.vaadin.flow.dom.Element;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.stepwell.core.wording.Language;

/** One part of a page as lines of text, a sentence a line. */
class PartField extends Div {
    private final Element area = new Element("textarea");

    PartField(String label, Language language, Consumer<List<String>> changed) {
        addClassNames("field", "note-part");
        String id = "p" + UUID.randomUUID();
        area.setAttribute("id", id).setAttribute("lang", language.code()).setAttribute("rows", "3")
                .setAttribute("spellcheck", "true").setAttribute("maxlength", "4000");
        area.addPropertyChangeListener("value", "change", event -> changed.accept(
                lines(String.valueOf(event.getValue() == null ? "" : event.getValue()))));
        NativeLabel words = new NativeLabel(label);
        words.getElement().setAttribute("for", id);
        add(words);
        getElement().appendChild(area);
    }

    private static List<String> lines(String text) {
        return text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    }

    void show(List<String> sentences) {
        area.setAttribute("rows", String.valueOf(Math.max(2, sentences.size() + 1)));
        area.setProperty("value", String.join("\n", sentences));
    }
}
