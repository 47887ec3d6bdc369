package org.stepwell.block.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.OrderedList;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import org.stepwell.block.BlockPicture;
import org.stepwell.block.BlockService;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.AdultService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import tools.jackson.databind.json.JsonMapper;

/** The block of the day: who is where, the clock, what to do when time is lost, the minutes of each child. */
@Route("block")
@Menu(order = 100, title = "block.title")
@PermitAll
@StyleSheet("context://look/block.css")
class BlockView extends Div implements HasDynamicTitle {
    private final Words texts = Words.of("block");
    private final BlockService blocks;
    private final AdultService adults;
    private final JsonMapper json;
    private final CurrentAdult current;
    private final Div content = new Div();
    private final Div message = new Div();
    private Classroom room;

    @SuppressWarnings("NullAway.Init")
    BlockView(RosterService roster, AdultService adults, BlockService blocks, JsonMapper json, CurrentAdult current) {
        this.current = current;
        this.blocks = blocks;
        this.adults = adults;
        this.json = json;
        add(new H1(texts.say("title")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        room = ClassChoice.of(classes);
        add(ClassChoice.line(classes), message, content);
        try {
            draw();
        } catch (NotVisible shared) {
            add(Parts.soft(texts.say("only-adults")));
        }
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    private void draw() {
        content.removeAll();
        BlockPicture picture = blocks.picture(room.classId());
        BlockPattern pattern = picture.pattern();
        if (picture.groups() == null) {
            content.add(Parts.sheet(new Paragraph(texts.say("groups.none")), Parts.link("groups", texts.say("groups.go"))));
        }
        if (pattern != null && picture.size() > pattern.stations().size()) {
            content.add(Parts.sheet(new Paragraph(texts.say("too-few", picture.size(), pattern.stations().size()))));
        } else if (pattern != null && picture.groups() != null) {
            if (picture.running() != null) {
                content.add(new BlockClock(picture, json).element());
            } else {
                content.add(new FewPanel(picture, (group, with) -> tried(() -> blocks.join(room.classId(), group, with))),
                        begin(picture, pattern));
            }
            if (picture.plan() != null) {
                content.add(new BlockBoard(picture, pattern));
            }
            content.add(prints());
            if (picture.running() != null) {
                // It goes on at the next full minute by itself.
                if (picture.stops().stream().anyMatch(stop -> stop.holds(picture.now())
                        && stop.ends().isAfter(picture.now().plusMinutes(1)))) {
                    content.add(Parts.button(texts.say("lost.go-on"), () -> tried(() ->
                            blocks.goOn(room.classId(), picture.running().version()))));
                }
                content.add(new LossPanel(room.classId(), picture, blocks, current::now, this::tried));
            }
            content.add(away(picture), order(picture));
        }
        content.add(new LedgerPanel(picture));
        NativeDetails setUp = new NativeDetails(texts.say("set-up"),
                new SetUpPanel(room.classId(), picture, adults.adults(room.classId()), blocks, this::tried));
        setUp.setOpen(pattern == null || picture.size() > pattern.stations().size());
        if (pattern == null) {
            content.addComponentAsFirst(Parts.soft(texts.say("set-up.first")));
        }
        content.add(setUp);
    }

    private Component begin(BlockPicture picture, BlockPattern pattern) {
        int usual = pattern.rotationsOn(picture.day().getDayOfWeek());
        LocalTime now = picture.now().truncatedTo(ChronoUnit.MINUTES);
        String[] at = {now.isAfter(pattern.starts()) ? now.toString() : pattern.starts().toString()};
        Map<String, String> numbers = SetUpPanel.numbers(1, BlockPattern.MOST_ROTATIONS);
        String[] rotations = {String.valueOf(usual == 0 ? 1 : usual)};
        NativeButton begin = Parts.button(texts.say("begin"), () -> tried(() -> blocks.start(room.classId(),
                time(at[0]), Integer.parseInt(rotations[0]))));
        begin.addClassName("strong");
        Div row = new Div(Parts.input(texts.say("begin.at"), "time", at[0], value -> at[0] = value),
                Parts.choice(texts.say("begin.rotations"), numbers, rotations[0], value -> rotations[0] = value),
                begin);
        row.addClassNames("row", "block-small");
        return usual == 0 ? new Div(Parts.soft(texts.say("none-today")), row) : row;
    }

    static LocalTime time(String text) {
        try {
            return LocalTime.parse(text.strip().length() == 4 ? "0" + text.strip() : text.strip());
        } catch (DateTimeParseException wrong) {
            throw new Refused("block.time", text);
        }
    }

    private Component prints() {
        Div row = new Div();
        for (String reader : List.of("class", "substitute")) {
            row.add(Parts.sheetOut("/api/block/" + room.classId() + "/sheet.pdf?for=" + reader + "&lang="
                    + Words.language().code(), texts.say("print." + reader)));
        }
        row.addClassName("row");
        return row;
    }

    private Component away(BlockPicture picture) {
        Div chips = new Div();
        for (ChildRow child : picture.children()) {
            boolean away = picture.absent().contains(child.schoolKey());
            NativeButton chip = Parts.toggle(child.label(), away, now -> tried(() ->
                    blocks.absent(room.classId(), child.childId(), now)));
            chip.getElement().setAttribute("aria-label", texts.say(away ? "away.back" : "away.mark", child.label()));
            chips.add(chip);
        }
        chips.addClassName("row");
        NativeDetails details = new NativeDetails(texts.say("away", picture.absent().size()), chips);
        details.setOpen(!picture.absent().isEmpty());
        return details;
    }

    private Component order(BlockPicture picture) {
        OrderedList list = new OrderedList();
        picture.order().forEach(place -> list.add(new ListItem(texts.say("order." + place.why(), place.group()))));
        return new NativeDetails(texts.say("order"), list);
    }

    private void tried(Runnable change) {
        try {
            change.run();
            message.removeAll();
            draw();
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, Words.told(wrong));
        }
    }
}
