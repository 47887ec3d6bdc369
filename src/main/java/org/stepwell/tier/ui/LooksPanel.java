package org.stepwell.tier.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.Progression;
import org.stepwell.observation.ObservationLine;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.ClassPicture;

/** The looks at a child, newest first; each can be corrected or taken back, and the older one stays to be read. */
class LooksPanel extends Div {
    private static final Set<String> SHARED_TAGS = Set.of("said", "drew", "showed", "home_language", "self_corrected",
            "copied", "not_yet", "wrong_total", "substitute", "from_paper", "written_later", "not_valid");

    private final Words texts = Words.of("tier");
    private final Map<String, String> steps = new LinkedHashMap<>();
    private final Map<String, String> helps = new LinkedHashMap<>();
    private final ObservationService observations;
    private final ClassPicture picture;
    private final Map<String, String> adults;
    private final Runnable changed;
    private final Div message = new Div();

    /** @param adults names of adults by the sign-in names that stand in looks */
    LooksPanel(ChildRow child, ClassPicture picture, ObservationService observations, Map<String, String> adults,
            Runnable changed) {
        this.adults = adults;
        this.observations = observations;
        this.picture = picture;
        this.changed = changed;
        for (int step = 1; step <= 5; step++) {
            steps.put(Integer.toString(step), texts.say("step", step));
        }
        for (Help help : Help.values()) {
            helps.put(help.code(), texts.say("help." + help.code()));
        }
        addClassName("sheet");
        List<ObservationLine> looks = observations.looks(child.childId());
        add(new H2(texts.say("looks")), message, addOne(child));
        if (looks.isEmpty()) {
            add(Parts.soft(texts.say("looks.none")));
            return;
        }
        UnorderedList list = new UnorderedList();
        list.addClassNames("looks", "history");
        looks.reversed().stream().filter(line -> !line.look().withdrawn()).forEach(line -> list.add(item(line)));
        add(list);
    }

    private ListItem item(ObservationLine line) {
        Look look = line.look();
        Div task = new Div();
        if (look.skill() != null) {
            task.add(new Span(look.skill() + (look.task() == null ? "" : " · " + look.task())));
        }
        if (look.step() != null) {
            task.add(Parts.stair(look.step()));
        }
        task.addClassName("task");
        Div seen = new Div(new Span(tags(look)));
        if (look.note() != null) {
            seen.add(new Span("“" + look.note() + "”"));
        }
        Span by = new Span(helps.get(look.help().code()) + " · " + adults.getOrDefault(look.observer(), look.observer()));
        by.addClassName("soft");
        seen.add(by);
        seen.addClassName("seen");
        ListItem item = new ListItem(new Span(texts.moment(look.observedAt())), task, seen);
        if (line.replacedBy() != null) {
            item.addClassName("past");
            Span kept = new Span(texts.say(line.withdrawnBy() ? "looks.taken-back" : "looks.corrected"));
            kept.addClassName("keep");
            item.add(kept);
        } else if (look.step() != null) {
            item.add(correct(look));
        }
        return item;
    }

    /** What was tapped beside the step, in the words of the progression where it has some. */
    private String tags(Look look) {
        return look.tags().stream().sorted().map(tag -> picture.progression().phrases().stream()
                .filter(p -> p.code().equals(tag) && p.language().equals(Words.language().code()))
                .findFirst().map(Progression.Phrase::text)
                .orElseGet(() -> SHARED_TAGS.contains(tag) ? texts.say("tag." + tag) : tag.replace('_', ' ')))
                .collect(Collectors.joining(", "));
    }

    private NativeDetails correct(Look look) {
        int[] step = {look.step() == null ? 1 : look.step()};
        Help[] help = {look.help()};
        Div fields = new Div(
                Parts.choice(texts.say("looks.step"), steps, Integer.toString(step[0]),
                        key -> step[0] = Integer.parseInt(key)),
                Parts.choice(texts.say("looks.help"), helps, help[0].code(), key -> help[0] = Help.of(key)),
                Parts.button(texts.say("looks.correct.save"), () -> act(() ->
                        observations.replace(look.id(), step[0], help[0], look.note(), false))),
                Parts.button(texts.say("looks.take-back"), () -> act(() ->
                        observations.replace(look.id(), null, help[0], null, true))));
        fields.addClassName("row");
        return new NativeDetails(texts.say("looks.correct"), fields);
    }

    private NativeDetails addOne(ChildRow child) {
        Map<String, String> skills = new LinkedHashMap<>();
        picture.progression().skills().forEach(s -> skills.put(s.code(), s.code() + " " + s.title()));
        if (skills.isEmpty()) {
            return new NativeDetails(texts.say("looks.add"), Parts.soft(texts.say("looks.no-progression")));
        }
        String[] skill = {picture.due().isEmpty() ? skills.keySet().iterator().next() : picture.due().lastKey()};
        String[] task = {""};
        String[] note = {""};
        int[] step = {3};
        Help[] help = {Help.NONE};
        Div fields = new Div(
                Parts.choice(texts.say("skill"), skills, skill[0], key -> skill[0] = key),
                Parts.input(texts.say("looks.task"), "text", "", text -> task[0] = text),
                Parts.choice(texts.say("looks.step"), steps, "3", key -> step[0] = Integer.parseInt(key)),
                Parts.choice(texts.say("looks.help"), helps, "none", key -> help[0] = Help.of(key)),
                Parts.input(texts.say("looks.note"), "text", "", text -> note[0] = text),
                Parts.button(texts.say("looks.save"), () -> act(() -> {
                    Look look = new Look(UUID.randomUUID(), OffsetDateTime.now(clock()).truncatedTo(ChronoUnit.MICROS),
                            child.schoolKey(), skill[0], task[0].isBlank() ? null : task[0].strip(), step[0], help[0],
                            Kind.TABLE, "", Set.of("written_later"), note[0].isBlank() ? null : note[0].strip(), null,
                            false, null);
                    observations.record(List.of(look), true).stream().filter(t -> t.reason() != null).findFirst()
                            .ifPresent(t -> {
                                throw new Refused(Objects.requireNonNull(t.reason()));
                            });
                })));
        fields.addClassName("row");
        return new NativeDetails(texts.say("looks.add"), fields);
    }

    private java.time.Clock clock() {
        return observations.clock();
    }

    private void act(Runnable action) {
        try {
            action.run();
            changed.run();
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, Words.told(wrong));
        }
    }
}
