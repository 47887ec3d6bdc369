package org.stepwell.tier.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.observation.ObservationLine;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ClassPicture;

/** The looks at a child, newest first; each can be corrected or taken back, and the older one stays to be read. */
class LooksPanel extends Div {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM, HH:mm", java.util.Locale.ENGLISH);
    private static final Map<String, String> STEPS = new LinkedHashMap<>();
    private static final Map<String, String> HELPS = new LinkedHashMap<>();

    static {
        for (int step = 1; step <= 5; step++) {
            STEPS.put(Integer.toString(step), "Step " + step);
        }
        HELPS.put("none", "no help");
        HELPS.put("cubes", "cubes out");
        HELPS.put("prompt", "a hint");
        HELPS.put("modelled", "shown first");
    }

    private final ObservationService observations;
    private final ClassPicture picture;
    private final Runnable changed;
    private final Div message = new Div();

    LooksPanel(ChildRow child, ClassPicture picture, ObservationService observations, Runnable changed) {
        this.observations = observations;
        this.picture = picture;
        this.changed = changed;
        addClassName("sheet");
        List<ObservationLine> looks = observations.looks(child.childId());
        add(new H2("Looks"), message, addOne(child));
        if (looks.isEmpty()) {
            add(Parts.soft("Not seen yet. Take the child to the table first."));
            return;
        }
        UnorderedList list = new UnorderedList();
        list.addClassName("looks");
        looks.reversed().stream().filter(line -> !line.look().withdrawn()).forEach(line -> list.add(item(line)));
        add(list);
    }

    private ListItem item(ObservationLine line) {
        Look look = line.look();
        ListItem item = new ListItem(new Span(DAY.format(look.observedAt())));
        if (look.skill() != null) {
            item.add(new Span(look.skill() + (look.task() == null ? "" : " · " + look.task())));
        }
        if (look.step() != null) {
            item.add(Parts.stair(look.step()));
        }
        item.add(new Span(HELPS.get(look.help().code())), new Span(String.join(", ", look.tags()).replace('_', ' ')),
                new Span(look.observer()));
        if (look.note() != null) {
            item.add(new Span("“" + look.note() + "”"));
        }
        if (line.replacedBy() != null) {
            item.addClassName("past");
            Span kept = new Span(line.withdrawnBy() ? "taken back, kept to be read" : "corrected, kept to be read");
            kept.addClassName("keep");
            item.add(kept);
        } else if (look.step() != null) {
            item.add(correct(look));
        }
        return item;
    }

    private NativeDetails correct(Look look) {
        int[] step = {look.step() == null ? 1 : look.step()};
        Help[] help = {look.help()};
        Div fields = new Div(
                Parts.choice("Step", STEPS, Integer.toString(step[0]), key -> step[0] = Integer.parseInt(key)),
                Parts.choice("Help", HELPS, help[0].code(), key -> help[0] = Help.of(key)),
                Parts.button("Save correction", () -> act(() ->
                        observations.replace(look.id(), step[0], help[0], look.note(), false))),
                Parts.button("Take back", () -> act(() ->
                        observations.replace(look.id(), null, help[0], null, true))));
        fields.addClassName("row");
        return new NativeDetails("Correct", fields);
    }

    private NativeDetails addOne(ChildRow child) {
        Map<String, String> skills = new LinkedHashMap<>();
        picture.progression().skills().forEach(s -> skills.put(s.code(), s.code() + " " + s.title()));
        if (skills.isEmpty()) {
            return new NativeDetails("Add a look", Parts.soft("Bring a progression in first, under People and files."));
        }
        String[] skill = {picture.due().isEmpty() ? skills.keySet().iterator().next() : picture.due().lastKey()};
        String[] task = {""};
        String[] note = {""};
        int[] step = {3};
        Help[] help = {Help.NONE};
        Div fields = new Div(
                Parts.choice("Skill", skills, skill[0], key -> skill[0] = key),
                Parts.input("Task", "text", "", text -> task[0] = text),
                Parts.choice("Step", STEPS, "3", key -> step[0] = Integer.parseInt(key)),
                Parts.choice("Help", HELPS, "none", key -> help[0] = Help.of(key)),
                Parts.input("Note", "text", "", text -> note[0] = text),
                Parts.button("Save look", () -> act(() -> {
                    Look look = new Look(UUID.randomUUID(), OffsetDateTime.now(clock()).truncatedTo(ChronoUnit.MICROS),
                            child.schoolKey(), skill[0], task[0].isBlank() ? null : task[0].strip(), step[0], help[0],
                            Kind.TABLE, "", Set.of("written_later"), note[0].isBlank() ? null : note[0].strip(), null,
                            false, null);
                    observations.record(List.of(look), true).stream().filter(t -> t.reason() != null).findFirst()
                            .ifPresent(t -> {
                                throw new IllegalArgumentException(t.reason());
                            });
                })));
        fields.addClassName("row");
        return new NativeDetails("Add a look", fields);
    }

    private java.time.Clock clock() {
        return observations.clock();
    }

    private void act(Runnable action) {
        try {
            action.run();
            changed.run();
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, String.valueOf(wrong.getMessage()));
        }
    }
}
