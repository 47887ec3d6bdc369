package org.stepwell.caseload.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.stepwell.caseload.ShareService;
import org.stepwell.caseload.Sharing;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;

/** What is shared of a class: with whom, what, why, until when; ended and begun here. */
class SharePanel extends Div {
    private final Words texts = Words.of("caseload");
    private final ShareService shares;
    private final Classroom room;
    private final List<ChildRow> children;
    private final Div message = new Div();
    private final Div content = new Div();
    private final Set<UUID> chosen = new LinkedHashSet<>();

    SharePanel(ShareService shares, Classroom room, List<ChildRow> children) {
        this.shares = shares;
        this.room = room;
        this.children = children;
        addClassName("sheet");
        add(new H2(texts.say("share.of", room.name())), message, content);
        draw();
    }

    private void draw() {
        content.removeAll();
        chosen.clear();
        List<Sharing> now = shares.sharings(room.classId());
        if (now.isEmpty()) {
            content.add(Parts.soft(texts.say("share.none")));
        }
        UnorderedList lines = new UnorderedList();
        lines.addClassName("people");
        List<UUID> byName = children.stream().map(ChildRow::childId).toList();
        now.stream().sorted(Comparator.comparingInt(s -> byName.indexOf(s.childId()))).forEach(s -> lines.add(line(s)));
        content.add(lines);
        List<Map.Entry<UUID, String>> others = shares.others(room.classId());
        if (others.isEmpty()) {
            content.add(Parts.soft(texts.say("share.adult.none")));
            return;
        }
        content.add(form(others));
        if (!now.isEmpty() && others.size() > 1) {
            content.add(handOver(now, others));
        }
    }

    private ListItem line(Sharing sharing) {
        String child = children.stream().filter(c -> c.childId().equals(sharing.childId())).map(ChildRow::label)
                .findFirst().orElse("");
        NativeButton end = Parts.button(texts.say("share.end"), () -> tried(() ->
                shares.end(room.classId(), sharing.grantId()), texts.say("share.ended", sharing.adult())));
        end.getElement().setAttribute("aria-label", texts.say("share.end") + ": " + child + ", " + sharing.adult());
        return new ListItem(new Span(texts.say("share.child", child, sharing.adult())), new Span(texts.say("share.line",
                sharing.plan() ? texts.say("share.line.plan") : "", sharing.notes() ? texts.say("share.line.notes") : "",
                texts.day(sharing.until()), sharing.reason()) + (sharing.by().isEmpty() ? ""
                        : " " + texts.say("share.line.by", sharing.by()))), end);
    }

    private Div form(List<Map.Entry<UUID, String>> others) {
        Div chips = new Div();
        for (ChildRow child : children) {
            chips.add(Parts.toggle(child.label(), false, in -> {
                if (in) {
                    chosen.add(child.childId());
                } else {
                    chosen.remove(child.childId());
                }
            }));
        }
        chips.addClassName("row");
        chips.getElement().setAttribute("role", "group").setAttribute("aria-label", texts.say("share.children"));
        String[] adult = {others.getFirst().getKey().toString()};
        boolean[] parts = {true, false};
        String[] reason = {""};
        String[] until = {shares.offered(room.classId()).toString()};
        NativeButton share = Parts.button(texts.say("share.do"), () -> {
            int number = chosen.size();
            tried(() -> shares.share(room.classId(), Set.copyOf(chosen), UUID.fromString(adult[0]), parts[0], parts[1],
                    reason[0], day(until[0])), texts.say("share.done", number));
        });
        share.addClassName("strong");
        Div fields = new Div(Parts.choice(texts.say("share.adult"), names(others), adult[0], key -> adult[0] = key),
                Parts.toggle(texts.say("share.plan"), parts[0], on -> parts[0] = on),
                Parts.toggle(texts.say("share.notes"), parts[1], on -> parts[1] = on),
                Parts.input(texts.say("share.reason"), "text", "", value -> reason[0] = value),
                Parts.input(texts.say("share.until"), "date", until[0], value -> until[0] = value), share);
        fields.addClassName("row");
        return new Div(new H3(texts.say("share")), Parts.soft(texts.say("share.looks") + " " + texts.say("share.change")),
                chips, fields);
    }

    private NativeDetails handOver(List<Sharing> now, List<Map.Entry<UUID, String>> others) {
        Map<String, String> from = new LinkedHashMap<>();
        now.forEach(sharing -> from.put(sharing.adultId().toString(), sharing.adult()));
        Map<String, String> to = names(others);
        String[] one = {from.keySet().iterator().next()};
        String[] other = {to.keySet().iterator().next()};
        Div row = new Div(Parts.choice(texts.say("hand-over.from"), from, one[0], key -> one[0] = key),
                Parts.choice(texts.say("hand-over.to"), to, other[0], key -> other[0] = key),
                Parts.button(texts.say("hand-over.do"), () -> tried(() -> shares.handOver(room.classId(),
                        UUID.fromString(one[0]), UUID.fromString(other[0])), texts.say("hand-over.done"))));
        row.addClassName("row");
        return new NativeDetails(texts.say("hand-over"), row);
    }

    private static Map<String, String> names(List<Map.Entry<UUID, String>> adults) {
        Map<String, String> names = new LinkedHashMap<>();
        adults.forEach(adult -> names.put(adult.getKey().toString(), adult.getValue()));
        return names;
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException wrong) {
            throw new Refused("day.none", text);
        }
    }

    private void tried(Runnable change, String done) {
        try {
            change.run();
            draw();
            Parts.say(message, done);
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, Words.told(wrong));
        }
    }
}
