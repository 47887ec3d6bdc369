package org.stepwell.grouping.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiConsumer;
import org.stepwell.core.grouping.Wish;
import org.stepwell.core.wording.GroupingWording;
import org.stepwell.grouping.GroupsPicture;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;

/** The wishes that hold, each to be taken back, and a line to make one. */
final class WishesPanel extends Div {
    private static final int MOST_ROTATIONS = 8;

    private final Words words = Words.of("grouping");
    private final GroupsPicture picture;
    private final BiConsumer<Wish, Boolean> change;
    private final Div message = new Div();
    private final Div fields = new Div();
    private String kind = "apart";
    private String one;
    private String other;
    private String rotation = "1";

    /** @param change told a wish and whether it holds from now on */
    WishesPanel(GroupsPicture picture, BiConsumer<Wish, Boolean> change) {
        this.picture = picture;
        this.change = change;
        this.one = picture.rows().getFirst().schoolKey();
        this.other = picture.rows().getLast().schoolKey();
        GroupingWording wording = new GroupingWording(Words.language());
        Map<String, String> labels = picture.labels();
        UnorderedList list = new UnorderedList();
        list.addClassName("looks");
        picture.wishes().forEach(wish -> {
            String said = wording.wish(wish, id -> labels.getOrDefault(id, id));
            NativeButton back = Parts.button(words.say("wish.back"), () -> change.accept(wish, false));
            back.getElement().setAttribute("aria-label", words.say("wish.back") + ": " + said);
            list.add(new ListItem(new Span(said), back));
        });
        if (picture.wishes().isEmpty()) {
            add(Parts.soft(words.say("wish.none")));
        } else {
            add(list);
        }
        fields.addClassName("row");
        add(Parts.soft(words.say("wish.how")), fields, message);
        draw();
    }

    private void draw() {
        fields.removeAll();
        Map<String, String> kinds = new LinkedHashMap<>();
        for (String each : new String[] {"apart", "together", "away", "second"}) {
            kinds.put(each, words.say("wish." + each));
        }
        Map<String, String> children = new LinkedHashMap<>();
        for (ChildRow row : picture.rows()) {
            children.put(row.schoolKey(), row.label());
        }
        Map<String, String> rotations = new LinkedHashMap<>();
        for (int r = 1; r <= MOST_ROTATIONS; r++) {
            rotations.put(String.valueOf(r), String.valueOf(r));
        }
        fields.add(Parts.choice(words.say("wish.kind"), kinds, kind, key -> {
            kind = key;
            draw();
        }), Parts.choice(words.say("wish.child"), children, one, key -> one = key));
        if (kind.equals("apart") || kind.equals("together")) {
            fields.add(Parts.choice(words.say("wish.other"), children, other, key -> other = key));
        } else if (kind.equals("away")) {
            fields.add(Parts.choice(words.say("wish.rotation"), rotations, rotation, key -> rotation = key));
        }
        fields.add(Parts.button(words.say("wish.add"), this::make));
    }

    private void make() {
        boolean pair = kind.equals("apart") || kind.equals("together");
        if (pair && one.equals(other)) {
            Parts.say(message, words.say("wish.two"));
            return;
        }
        change.accept(switch (kind) {
            case "apart" -> new Wish.Apart(one, other);
            case "together" -> new Wish.Together(one, other);
            case "away" -> new Wish.AwayAt(one, Integer.parseInt(rotation));
            default -> new Wish.WithSecondAdult(one);
        }, true);
    }
}
