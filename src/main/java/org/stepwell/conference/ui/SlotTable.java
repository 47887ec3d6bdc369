package org.stepwell.conference.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.HasComponents;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.dom.Element;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.stepwell.conference.Schedule;
import org.stepwell.conference.Schedule.Arrival;
import org.stepwell.conference.Slot;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;

/** The slots of a schedule, day by day: who comes, in which language the copy is, who came. */
class SlotTable {
    private static final String FREE = "free";
    private static final String PAUSE = "pause";
    private static final String OUT = "out";

    /** Keeps changed slots. */
    interface Keeper {
        void keep(List<Slot> slots, int version, int changed);
    }

    private final Schedule schedule;
    private final Words words;
    private final Keeper keeper;
    private final BiConsumer<Slot, Arrival> arrived;
    private final Map<UUID, String> labels = new LinkedHashMap<>();

    SlotTable(Schedule schedule, List<ChildRow> children, Words words, Keeper keeper,
            BiConsumer<Slot, Arrival> arrived) {
        this.schedule = schedule;
        this.words = words;
        this.keeper = keeper;
        this.arrived = arrived;
        children.forEach(child -> labels.put(child.childId(), child.label()));
    }

    /** Draws it; the slot of that index gets the focus back. */
    void into(HasComponents place, int focus) {
        schedule.slots().stream().map(Slot::day).distinct().forEach(day -> {
            Div scroll = new Div(table(day, focus));
            scroll.addClassName("scroll");
            place.add(new H2(words.weekday(day)), scroll);
        });
    }

    private NativeTable table(LocalDate day, int focus) {
        NativeTableRow head = new NativeTableRow();
        Stream.of("time", "who", "copy", "arrival", "note").forEach(name ->
                head.add(new NativeTableHeaderCell(words.say(name))));
        NativeTableBody body = new NativeTableBody();
        for (int i = 0; i < schedule.slots().size(); i++) {
            if (schedule.slots().get(i).day().equals(day)) {
                body.add(row(i, i == focus));
            }
        }
        NativeTable table = new NativeTable(new NativeTableHeader(head), body);
        table.addClassNames("plain-table", "slots");
        return table;
    }

    private NativeTableRow row(int at, boolean focus) {
        Slot slot = schedule.slots().get(at);
        UUID child = slot.childId();
        String time = Words.time(slot.start()) + "–" + Words.time(slot.end());
        Div who = select(words.say("who.at", time), choices(slot), key(slot), key -> change(at, key), focus);
        NativeTableRow row = new NativeTableRow(new NativeTableHeaderCell(time), new NativeTableCell(who));
        if (child == null || !labels.containsKey(child)) {
            row.add(new NativeTableCell(), new NativeTableCell(), new NativeTableCell());
            return row;
        }
        Map<String, String> languages = new LinkedHashMap<>();
        languages.put(Language.ENGLISH.code(), "English");
        languages.put(Language.SPANISH.code(), "Español");
        row.add(new NativeTableCell(select(words.say("copy.at", time), languages, slot.language().code(),
                code -> replace(at, slot.of(child, slot.household(), Language.of(code))), false)));
        Div came = new Div(mark(slot, Arrival.CAME, time), mark(slot, Arrival.NO_SHOW, time));
        came.addClassName("actions");
        row.add(new NativeTableCell(came), new NativeTableCell(way("notes/" + child + "/" + slot.language().code(),
                "to-note", time)));
        return row;
    }

    private Component way(String path, String text, String time) {
        Component link = Parts.link(path, words.say(text));
        link.getElement().setAttribute("aria-label", words.say(text) + ", " + time);
        return link;
    }

    private Component mark(Slot slot, Arrival arrival, String time) {
        Component toggle = Parts.toggle(words.say("arrival." + arrival.name()), schedule.of(slot) == arrival,
                on -> arrived.accept(slot, on ? arrival : Arrival.OPEN));
        toggle.getElement().setAttribute("aria-label", words.say("arrival." + arrival.name()) + ", " + time);
        return toggle;
    }

    private Map<String, String> choices(Slot slot) {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put(FREE, words.say(FREE));
        choices.put(PAUSE, words.say(PAUSE));
        choices.put(OUT, words.say(OUT));
        labels.forEach((id, label) -> choices.put(id + "/1", label));
        labels.forEach((id, label) -> choices.put(id + "/2", words.say("household", label, 2)));
        if (slot.childId() != null && !labels.containsKey(slot.childId())) {
            choices.put(key(slot), words.say("left"));
        }
        return choices;
    }

    private static String key(Slot slot) {
        return slot.pause() ? PAUSE : slot.childId() == null ? FREE : slot.childId() + "/" + slot.household();
    }

    /** Whoever has another time already changes places with the family that was here. */
    private void change(int at, String key) {
        List<Slot> slots = new java.util.ArrayList<>(schedule.slots());
        Slot here = slots.get(at);
        if (key.equals(OUT)) {
            slots.remove(at);
        } else if (key.equals(FREE) || key.equals(PAUSE)) {
            slots.set(at, here.emptied(key.equals(PAUSE)));
        } else {
            UUID child = UUID.fromString(key.substring(0, key.indexOf('/')));
            int household = Integer.parseInt(key.substring(key.indexOf('/') + 1));
            Language language = Language.ENGLISH;
            for (int i = 0; i < slots.size(); i++) {
                Slot there = slots.get(i);
                if (i != at && key(there).equals(key) && schedule.of(there) != Arrival.NO_SHOW) {
                    language = there.language();
                    UUID mine = here.childId();
                    slots.set(i, mine == null ? there.emptied(false) : there.of(mine, here.household(),
                            here.language()));
                }
            }
            slots.set(at, here.of(child, household, language));
        }
        keeper.keep(slots, schedule.version(), at);
    }

    private void replace(int at, Slot slot) {
        List<Slot> slots = new java.util.ArrayList<>(schedule.slots());
        slots.set(at, slot);
        keeper.keep(slots, schedule.version(), -1);
    }

    private static Div select(String label, Map<String, String> options, String value, Consumer<String> changed,
            boolean focus) {
        Element select = new Element("select");
        select.setAttribute("aria-label", label);
        options.forEach((key, text) -> {
            Element option = new Element("option");
            option.setAttribute("value", key).setText(text);
            if (key.equals(value)) {
                option.setAttribute("selected", true);
            }
            select.appendChild(option);
        });
        select.addPropertyChangeListener("value", "change", event -> changed.accept(String.valueOf(event.getValue())));
        if (focus) {
            select.callJsFunction("focus");
        }
        Div field = new Div();
        field.addClassName("field");
        field.getElement().appendChild(select);
        return field;
    }
}
