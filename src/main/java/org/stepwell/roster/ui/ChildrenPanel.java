package org.stepwell.roster.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.Enrolled;
import org.stepwell.roster.EnrolmentService.Entry;
import org.stepwell.roster.EnrolmentService;
import org.stepwell.roster.EntryFault;

/** The children of a class: added one by one, corrected, ended, moved on to another class, taken back. */
@StyleSheet("look/people.css")
public final class ChildrenPanel extends Div {
    private static final int SHOWN_AT_ONCE = 8;

    private final EnrolmentService enrolments;
    private final Classroom room;
    private final List<Classroom> others;
    private final LocalDate today;
    private final Words words = Words.of("people");
    private final Div message = new Div();
    private @Nullable UUID open;
    private boolean another;

    /**
     * @param room the class
     * @param classes every class of the adult; children are moved on to the others
     * @param today at the school
     */
    public ChildrenPanel(EnrolmentService enrolments, Classroom room, List<Classroom> classes, LocalDate today) {
        this.enrolments = enrolments;
        this.room = room;
        this.others = classes.stream().filter(other -> !other.classId().equals(room.classId())).toList();
        this.today = today;
        draw("");
    }

    private void draw(String said) {
        removeAll();
        message.removeAll();
        List<Enrolled> children = enrolments.inClass(room.classId());
        Div sheet = Parts.sheet(new H2(words.say("children")), message, adding());
        if (!said.isEmpty()) {
            Parts.say(message, said);
        }
        if (children.isEmpty()) {
            sheet.add(Parts.soft(words.say("children.none")));
        } else {
            NativeDetails all = new NativeDetails(words.say("children.count", children.size()), list(children));
            all.setOpen(children.size() <= SHOWN_AT_ONCE || open != null);
            sheet.add(all);
        }
        List<Enrolled> left = enrolments.left(room.classId());
        if (!left.isEmpty()) {
            sheet.add(gone(left));
        }
        add(sheet);
    }

    private Component adding() {
        String[] text = {"", "", "1", "", ""};
        Div row = new Div(Parts.input(words.say("child.given"), "text", "", given -> text[0] = given),
                Parts.input(words.say("child.family"), "text", "", family -> text[1] = family),
                Parts.input(words.say("child.grade"), "text", "1", grade -> text[2] = grade),
                Parts.input(words.say("child.key"), "text", "", key -> text[3] = key),
                Parts.input(words.say("child.start"), "date", "", day -> text[4] = day),
                Parts.button(words.say("child.add"), () -> act(() -> {
                    LocalDate start = text[4].isBlank() ? null : day(text[4]);
                    enrolments.add(room.classId(), new Entry(text[3], text[0], text[1], text[2]), start);
                    another = true;
                    return start == null || !start.isAfter(today) ? words.say("child.added", text[0].strip())
                            : words.say("child.added-later", text[0].strip(), words.day(start));
                })));
        row.addClassName("row");
        // Enter in a field adds; leaving it first tells the server what was typed.
        row.getElement().executeJs("this.addEventListener('keydown', e => { if (e.key === 'Enter'"
                + " && e.target.tagName === 'INPUT') { e.target.blur(); this.querySelector('button').click(); } })");
        if (another) {
            row.getElement().executeJs("this.querySelector('input').focus()");
            another = false;
        }
        return row;
    }

    private Component list(List<Enrolled> children) {
        UnorderedList list = new UnorderedList();
        list.addClassName("people");
        for (Enrolled child : children) {
            boolean edited = child.childId().equals(open);
            ListItem item = new ListItem(new Span(child.name()), about(child));
            if (edited) {
                item.add(change(child));
            } else {
                item.add(named(Parts.button(words.say("child.change"), () -> {
                    open = child.childId();
                    draw("");
                }), words.say("child.change-of", child.name())));
            }
            list.add(item);
        }
        return list;
    }

    private Component about(Enrolled child) {
        String text = child.schoolKey() + " · " + words.say("child.grade") + " " + child.grade() + " · "
                + words.say(child.startsOn().isAfter(today) ? "child.from" : "child.since",
                        words.day(child.startsOn()));
        LocalDate end = child.endsOn();
        Span span = new Span(end == null ? text : text + " · " + words.say("child.until", words.day(end)));
        span.addClassNames("soft", "small");
        return span;
    }

    private Component change(Enrolled child) {
        String[] text = {child.givenName(), child.familyName(), child.grade(), today.toString(), today.toString()};
        Div name = new Div(Parts.input(words.say("child.given"), "text", text[0], given -> text[0] = given),
                Parts.input(words.say("child.family"), "text", text[1], family -> text[1] = family),
                Parts.input(words.say("child.grade"), "text", text[2], grade -> text[2] = grade),
                Parts.button(words.say("child.save"), () -> act(() -> {
                    enrolments.correct(room.classId(), child.childId(), new Entry("", text[0], text[1], text[2]));
                    return words.say("child.saved", text[0].strip());
                })));
        Div end = new Div(Parts.input(words.say("child.last"), "date", text[3], day -> text[3] = day),
                Parts.button(words.say("child.leave"), () -> act(() -> {
                    LocalDate last = day(text[3]);
                    enrolments.end(room.classId(), child.childId(), last);
                    return words.say("child.left", child.name(), words.day(last));
                })));
        if (child.endsOn() != null) {
            end.add(Parts.button(words.say("child.stay"), () -> act(() -> {
                enrolments.end(room.classId(), child.childId(), null);
                return words.say("child.stays", child.name());
            })));
        }
        name.addClassName("row");
        end.addClassName("row");
        Div all = new Div(name, end);
        if (!others.isEmpty()) {
            all.add(moving(child, text));
        }
        all.add(Parts.button(words.say("child.close"), () -> {
            open = null;
            draw("");
        }));
        all.addClassName("change");
        return all;
    }

    private Div moving(Enrolled child, String[] text) {
        Map<String, String> classes = new LinkedHashMap<>();
        others.forEach(other -> classes.put(other.classId().toString(), other.name()));
        String[] to = {others.getFirst().classId().toString()};
        Div row = new Div(Parts.choice(words.say("child.to"), classes, to[0], key -> to[0] = key),
                Parts.input(words.say("child.move-day"), "date", text[4], day -> text[4] = day),
                Parts.button(words.say("child.move"), () -> act(() -> {
                    LocalDate first = day(text[4]);
                    enrolments.move(room.classId(), child.childId(), UUID.fromString(to[0]), first);
                    return words.say("child.moved", child.name(), classes.get(to[0]), words.day(first));
                })));
        row.addClassName("row");
        return row;
    }

    private Component gone(List<Enrolled> left) {
        UnorderedList list = new UnorderedList();
        list.addClassName("people");
        left.forEach(child -> list.add(new ListItem(new Span(child.name()), about(child),
                named(Parts.button(words.say("child.back"), () -> act(() -> {
                    enrolments.back(room.classId(), child.childId());
                    return words.say("child.is-back", child.name());
                })), words.say("child.back-of", child.name())))));
        return new NativeDetails(words.say("child.gone", left.size()), list);
    }

    static Component named(Component button, String name) {
        button.getElement().setAttribute("aria-label", name);
        return button;
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException none) {
            throw new BadDay();
        }
    }

    private static final class BadDay extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    /** Does something and draws the list as it then is; a fault leaves what was typed. */
    private void act(Supplier<String> what) {
        try {
            String said = what.get();
            open = null;
            draw(said);
        } catch (EntryFault.Found wrong) {
            EntryFault fault = wrong.fault();
            String why = words.say("fault." + (fault.reason().equals("day") ? "day-why" : fault.reason()));
            complain(words.say("fault." + fault.field(), why));
        } catch (BadDay wrong) {
            complain(words.say("fault.day", words.say("fault.date")));
        } catch (NotVisible closed) {
            complain(words.say("closed"));
        }
    }

    private void complain(String text) {
        Parts.say(message, text);
    }
}
