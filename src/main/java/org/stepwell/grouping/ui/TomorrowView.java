package org.stepwell.grouping.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.stepwell.grouping.GroupingService;
import org.stepwell.grouping.GroupsPicture;
import org.stepwell.grouping.Seating;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Kind;
import org.stepwell.grouping.Seating.Place;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;

/** Tomorrow's table: the same groups, two swapped, a number for each. One day, no tier, no threshold. */
@Route("groups/tomorrow")
@PermitAll
class TomorrowView extends Div implements HasDynamicTitle {
    private final GroupingService groupings;
    private final Words words = Words.of("grouping");
    private final Div message = new Div();
    private final Map<Integer, String> tasks = new TreeMap<>();
    private Classroom room;
    private GroupsPicture picture;
    private Seating seating;
    private Sharing sharing;
    private LocalDate day;

    @SuppressWarnings("NullAway.Init")
    TomorrowView(RosterService roster, GroupingService groupings) {
        this.groupings = groupings;
        add(new H1(words.say("tomorrow")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        room = ClassChoice.of(classes);
        add(ClassChoice.line(classes));
        try {
            picture = groupings.picture(room.classId());
        } catch (NotVisible shared) {
            add(Parts.soft(words.say("only-adults")));
            return;
        }
        day = nextDay(picture.day());
        var held = groupings.seating(room.classId(), day);
        Anchor back = Parts.link("groups", words.say("to-groups"));
        if (held.isEmpty()) {
            add(Parts.soft(words.say("tomorrow.none")), back);
            return;
        }
        Div links = new Div(back);
        links.addClassNames("row", "board-tools");
        add(Parts.soft(words.say("tomorrow.intro", words.weekday(day))), links);
        show(held.get());
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(words.say("tomorrow"));
    }

    /** The next day that is no Saturday or Sunday. */
    private static LocalDate nextDay(LocalDate today) {
        LocalDate next = today.plusDays(1);
        while (next.getDayOfWeek() == DayOfWeek.SATURDAY || next.getDayOfWeek() == DayOfWeek.SUNDAY) {
            next = next.plusDays(1);
        }
        return next;
    }

    private void show(Seating held) {
        seating = held;
        Map<String, Integer> groupOf = new TreeMap<>();
        picture.rows().forEach(row -> groupOf.put(row.schoolKey(), 0));
        held.groupOf().forEach((child, group) -> groupOf.replace(child, group));
        sharing = new Sharing(held.groups().size(), groupOf);
        held.groups().forEach(g -> tasks.put(g.number(), g.task()));
        NativeButton save = Parts.button(words.say("tomorrow.save", words.weekday(day)), this::keep);
        save.addClassName("strong");
        Div row = new Div(save);
        row.addClassNames("row", "board-tools");
        add(new Board(sharing, picture.labels(), false, this::below, message::removeAll), row, message);
    }

    private List<Component> below(int group) {
        Group own = seating.groups().get(group - 1);
        Component number = Parts.input(words.say("tomorrow.number"), "text", tasks.getOrDefault(group, ""),
                text -> tasks.put(group, text.length() > 100 ? text.substring(0, 100) : text));
        number.getElement().getChild(1).setAttribute("aria-label", words.say("tomorrow.number") + ", "
                + words.say("group", group));
        return own.skill() == null ? List.of(number) : List.of(Parts.soft(own.skill()), number);
    }

    private void keep() {
        Map<String, Place> places = new TreeMap<>();
        sharing.groupOf().forEach((child, group) -> {
            Place before = seating.places().get(child);
            boolean stays = before != null && before.group() == group;
            places.put(child, new Place(group, stays && before.pinned(), stays ? before.reason() : ""));
        });
        List<Group> groups = seating.groups().stream().map(g -> new Group(g.number(), g.skill(),
                tasks.getOrDefault(g.number(), "").strip(), g.secondAdult())).toList();
        groupings.save(room.classId(), day, Kind.DAY, groups, places);
        Parts.say(message, words.say("tomorrow.saved", words.weekday(day)));
    }
}
