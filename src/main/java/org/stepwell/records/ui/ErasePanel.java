package org.stepwell.records.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.IntConsumer;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.records.Erasure.Preview;
import org.stepwell.records.Erasure.Why;
import org.stepwell.records.ErasureService;
import org.stepwell.records.KeptChild;

/** What erasing a child would take, and the erasing, after the school's id was typed by hand. */
class ErasePanel extends Div {
    /**
     * @param child whom
     * @param done told how many rows went
     */
    ErasePanel(ErasureService erasure, KeptChild child, IntConsumer done) {
        Words texts = Words.of("records");
        addClassName("sheet");
        Preview preview = erasure.preview(child.childId());
        Div message = new Div();
        Map<String, String> reasons = new LinkedHashMap<>();
        for (Why why : Why.values()) {
            reasons.put(why.name(), texts.say("erase." + why.code()));
        }
        String[] why = {Why.FAMILY_ASKED.name()};
        String[] typed = {""};
        Div inside = new Div(new Paragraph(texts.say("erase.about", sum(preview.rows()))));
        if (!preview.mentions().isEmpty()) {
            inside.add(new Paragraph(texts.say("erase.named", sum(preview.mentions()), preview.name())));
        }
        Div fields = new Div(Parts.choice(texts.say("erase.why"), reasons, why[0], key -> why[0] = key),
                Parts.input(texts.say("erase.key", child.schoolKey()), "text", "", value -> typed[0] = value));
        fields.addClassName("row");
        inside.add(Parts.soft(texts.say("erase.files")), message, fields,
                Parts.button(texts.say("erase.do"), () -> {
                    try {
                        done.accept(erasure.erase(child.childId(), typed[0], Why.valueOf(why[0])));
                    } catch (Refused refused) {
                        Parts.say(message, Words.told(refused));
                    }
                }));
        add(new NativeDetails(texts.say("erase"), inside));
    }

    private static int sum(Map<String, Integer> rows) {
        return rows.values().stream().mapToInt(Integer::intValue).sum();
    }
}
