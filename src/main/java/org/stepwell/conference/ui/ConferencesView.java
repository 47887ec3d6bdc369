package org.stepwell.conference.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.stepwell.conference.Evening;
import org.stepwell.conference.Schedule;
import org.stepwell.conference.Schedule.Arrival;
import org.stepwell.conference.ScheduleService;
import org.stepwell.conference.Slot;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;

/** When which family comes for a talk; on the evening itself, who came, and the way to each talk. */
@Route("conferences")
@Menu(order = 420, title = "schedule.title")
@PermitAll
class ConferencesView extends Div implements BeforeEnterObserver, HasDynamicTitle {
    private final RosterService roster;
    private final ScheduleService schedules;
    private final CurrentAdult current;
    private final Words words = Words.of("schedule");
    private final Div message = new Div();
    private final Div board = new Div();
    private UUID classId = new UUID(0, 0);

    ConferencesView(RosterService roster, ScheduleService schedules, CurrentAdult current) {
        this.roster = roster;
        this.schedules = schedules;
        this.current = current;
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(words.say("title"));
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        removeAll();
        message.removeAll();
        add(new H1(words.say("title")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        classId = ClassChoice.of(classes).classId();
        add(ClassChoice.line(classes));
        if (!roster.seesWhole(classId)) {
            add(Parts.soft(words.say("not-yours")));
            return;
        }
        if (roster.children(classId).isEmpty()) {
            add(ClassChoice.noChildren());
            return;
        }
        add(Parts.soft(words.say("intro")), message, board);
        draw(-1);
    }

    private void draw(int focus) {
        board.removeAll();
        Schedule schedule = schedules.schedule(classId);
        List<ChildRow> children = roster.children(classId);
        if (!schedule.slots().isEmpty()) {
            board.add(actions(schedule, children));
            new SlotTable(schedule, children, words, this::keep, this::arrived).into(board, focus);
            without(schedule, children);
        }
        EveningForm form = new EveningForm(words, current.today(), evening -> act(-1, () -> schedules.save(classId,
                schedule.version(), Stream.concat(schedule.slots().stream(), evening.slots().stream()).toList())));
        board.add(schedule.slots().isEmpty() ? Parts.sheet(new H2(words.say("offer")), form)
                : new NativeDetails(words.say("offer.more"), form));
    }

    private Div actions(Schedule schedule, List<ChildRow> children) {
        NativeButton fill = Parts.button(words.say("fill"), () -> act(-1, () -> schedules.save(classId, schedule.version(),
                Evening.filled(schedule.slots(), children.stream().filter(c -> !schedule.holds(c.childId()))
                        .map(ChildRow::childId).toList()))));
        boolean room = schedule.slots().stream().anyMatch(slot -> slot.childId() == null && !slot.pause())
                && children.stream().anyMatch(c -> !schedule.holds(c.childId()));
        Div row = new Div();
        row.addClassName("actions");
        if (room) {
            fill.addClassName("strong");
            row.add(fill);
        }
        String lang = "?lang=" + Words.language().code();
        row.add(sheet("list.pdf" + lang, words.say("list")), sheet("notes.pdf" + lang, words.say("notes")),
                sheet("notes.pdf" + lang + "&print=large", words.say("notes-large")));
        return row;
    }

    private Anchor sheet(String path, String text) {
        return Parts.sheetOut("/api/conferences/" + classId + "/" + path, text);
    }

    private void without(Schedule schedule, List<ChildRow> children) {
        List<ChildRow> left = children.stream().filter(c -> !schedule.holds(c.childId())).toList();
        if (left.isEmpty()) {
            board.add(Parts.soft(words.say("without.none")));
            return;
        }
        UnorderedList list = new UnorderedList();
        list.addClassName("chips");
        left.forEach(child -> {
            Anchor chip = new Anchor("child/" + child.childId(), child.label());
            chip.addClassName("chip");
            list.add(new ListItem(chip));
        });
        board.add(new H2(words.say("without")), list);
    }

    private void arrived(Slot slot, Arrival arrival) {
        schedules.arrived(Objects.requireNonNull(slot.childId()), slot.day(), slot.household(), arrival);
        message.removeAll();
        draw(-1);
    }

    private void keep(List<Slot> slots, int version, int changed) {
        act(changed, () -> schedules.save(classId, version, slots));
    }

    private void act(int focus, Runnable change) {
        message.removeAll();
        try {
            change.run();
            Parts.say(message, words.say("kept", schedules.schedule(classId).version()));
        } catch (Refused refused) {
            Parts.say(message, Words.told(refused));
        }
        draw(focus);
    }
}
