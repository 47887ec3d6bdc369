package org.stepwell.block.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalTime;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.stepwell.block.BlockDay;
import org.stepwell.block.BlockPicture;
import org.stepwell.block.BlockService;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.LostTime;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** Time is lost: the three ways side by side, each with its end and each group's minutes. */
class LossPanel extends Div {
    private final Words texts = Words.of("block");
    private final UUID classId;
    private final BlockPicture picture;
    private final BlockDay running;
    private final BlockService blocks;
    private final Supplier<LocalTime> now;
    private final Consumer<Runnable> tried;
    private final Div ways = new Div();
    private String lost = "10";

    LossPanel(UUID classId, BlockPicture picture, BlockService blocks, Supplier<LocalTime> now,
            Consumer<Runnable> tried) {
        this.now = now;
        this.classId = classId;
        this.picture = picture;
        this.running = Objects.requireNonNull(picture.running());
        this.blocks = blocks;
        this.tried = tried;
        ways.addClassName("block-ways");
        ways.getElement().setAttribute("aria-live", "polite");
        Div row = new Div(Parts.input(texts.say("lost.minutes"), "number", lost, value -> lost = value),
                Parts.button(texts.say("lost.show"), this::show));
        row.addClassNames("row", "block-small");
        add(new NativeDetails(texts.say("lost"), new Div(Parts.soft(texts.say("lost.about")), row, ways)));
    }

    private void show() {
        ways.removeAll();
        try {
            int minutes = minutes();
            LocalTime from = now.get();
            Map<LostTime, DayPlan> open = blocks.ways(classId, from, minutes);
            for (LostTime way : LostTime.values()) {
                ways.add(way(way, open.get(way), from, minutes));
            }
        } catch (IllegalArgumentException wrong) {
            Parts.say(ways, Words.told(wrong));
        }
    }

    private int minutes() {
        try {
            return Integer.parseInt(lost.strip());
        } catch (NumberFormatException wrong) {
            throw new Refused("block.lost", lost);
        }
    }

    private Component way(LostTime way, @Nullable DayPlan plan, LocalTime from, int minutes) {
        Div sheet = Parts.sheet(new H3(texts.say("lost." + way)));
        if (plan == null) {
            sheet.add(Parts.soft(texts.say("lost.closed")));
            return sheet;
        }
        UnorderedList groups = new UnorderedList();
        for (int group = 1; group <= picture.size(); group++) {
            int before = running.plan().teacherMinutes(group);
            if (plan.teacherMinutes(group) != before) {
                groups.add(new ListItem(texts.say("lost.minutes-of", group, plan.teacherMinutes(group), before)));
            }
        }
        sheet.add(new Paragraph(texts.say("lost.ends", Words.time(plan.ends()))),
                groups.getComponentCount() == 0 ? new Paragraph(texts.say("lost.nobody")) : groups,
                Parts.button(texts.say("lost.take"), () -> tried.accept(() ->
                        blocks.lose(classId, running.version(), way, from, minutes))));
        return sheet;
    }
}
