package org.stepwell.block.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.dom.Element;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.stepwell.block.BlockPicture;
import org.stepwell.core.rotation.DayPlan.Turn;
import org.stepwell.platform.ui.Words;
import tools.jackson.databind.json.JsonMapper;

/** The clock of a running block; it counts in the browser, without a word from the server. */
class BlockClock {
    private static final List<String> WORDS = List.of("sound", "large", "small", "over", "begins", "change", "next", "then");

    private final BlockPicture picture;
    private final JsonMapper json;
    private final Words texts = Words.of("block");

    BlockClock(BlockPicture picture, JsonMapper json) {
        this.picture = picture;
        this.json = json;
    }

    Component element() {
        UI.getCurrent().getPage().addJsModule("context://look/block-clock.js");
        List<Turn> turns = Objects.requireNonNull(picture.plan()).turns();
        List<Map<String, Object>> all = new ArrayList<>();
        for (int i = 0; i < turns.size(); i++) {
            Turn turn = turns.get(i);
            all.add(Map.of("from", picture.instant(turn.starts()).toEpochMilli(),
                    "to", picture.instant(turn.ends()).toEpochMilli(),
                    "label", texts.say("rotation.of", i + 1, turns.size()), "table", atTable(turn)));
        }
        Map<String, String> words = new LinkedHashMap<>();
        WORDS.forEach(word -> words.put(word, texts.say("clock." + word)));
        List<Map<String, Object>> stops = picture.stops().stream().map(stop -> Map.<String, Object>of(
                "from", picture.instant(stop.from()).toEpochMilli(), "to", picture.instant(stop.ends()).toEpochMilli(),
                "label", texts.say("clock.still", Words.time(stop.ends())))).toList();
        Element clock = new Element("sw-block-clock");
        clock.setAttribute("turns", json.writeValueAsString(all)).setAttribute("stops", json.writeValueAsString(stops))
                .setAttribute("words", json.writeValueAsString(words))
                .setAttribute("now", String.valueOf(picture.instant(picture.now()).toEpochMilli()));
        Div place = new Div();
        place.getElement().appendChild(clock);
        return place;
    }

    private String atTable(Turn turn) {
        return turn.atTeacher().isEmpty() ? texts.say("at-table.nobody")
                : texts.say("at-table", turn.atTeacher().getAsInt(),
                        String.join(", ", picture.names(turn.atTeacher().getAsInt())));
    }
}
