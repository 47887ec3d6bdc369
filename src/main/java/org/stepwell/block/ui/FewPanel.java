package org.stepwell.block.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiConsumer;
import org.stepwell.block.BlockPicture;
import org.stepwell.block.Joining;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** Groups of which too few are there today: each may sit with another for the day. Nothing is joined by itself. */
class FewPanel extends Div {
    FewPanel(BlockPicture picture, BiConsumer<Integer, Integer> join) {
        Words texts = Words.of("block");
        for (Joining few : picture.few()) {
            Div sheet = Parts.sheet(new Paragraph(texts.say("few", few.group(), few.here())));
            if (few.with().isEmpty()) {
                sheet.add(Parts.soft(texts.say("few.nowhere")));
            } else {
                Map<String, String> groups = new LinkedHashMap<>();
                few.with().forEach(n -> groups.put(String.valueOf(n), texts.say("at-table", n,
                        String.join(", ", picture.names(n)))));
                String[] with = {String.valueOf(few.with().getFirst())};
                Div row = new Div(Parts.choice(texts.say("few.with", few.group()), groups, with[0], n -> with[0] = n),
                        Parts.button(texts.say("few.join"), () -> join.accept(few.group(), Integer.parseInt(with[0]))));
                row.addClassName("row");
                sheet.add(row);
            }
            add(sheet);
        }
    }
}
