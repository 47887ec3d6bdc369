package org.stepwell.grouping.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.grouping.Aim;
import org.stepwell.core.grouping.GroupScore;
import org.stepwell.core.grouping.Grouping;
import org.stepwell.core.grouping.GroupingTask;
import org.stepwell.core.grouping.Wish;
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

/** Groups for the next days: proposals side by side, changed by hand, saved with a date. The adult decides. */
@Route("groups")
@Menu(order = 110, title = "grouping.groups")
@PermitAll
class GroupsView extends Div implements HasDynamicTitle {
    private static final int MOST_GROUPS = 10;

    private final GroupingService groupings;
    private final Words words = Words.of("grouping");
    private final Div score = new Div();
    private final Div message = new Div();
    private Classroom room;
    private GroupsPicture picture;
    private ScorePanel panel;
    private Alternatives alternatives;
    private Sharing sharing;
    private Board board;
    private Aim aim = Aim.FOCUS;
    private String on = "";

    @SuppressWarnings("NullAway.Init")
    GroupsView(RosterService roster, GroupingService groupings) {
        this.groupings = groupings;
        add(new H1(words.say("groups")));
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
        if (picture.rows().isEmpty()) {
            add(ClassChoice.noChildren());
            return;
        }
        on = picture.day().toString();
        draw(null);
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(words.say("groups"));
    }

    private void draw(@Nullable Sharing kept) {
        while (getComponentCount() > 2) {
            remove(getComponentAt(2));
        }
        panel = new ScorePanel(picture);
        sharing = kept != null ? kept : asNow();
        board = new Board(sharing, picture.labels(), true, this::below, this::changed);
        alternatives = new Alternatives(picture, this::take);
        add(Parts.soft(words.say(picture.unit() ? "intro" : "intro.start")), controls(), alternatives,
                new H2(words.say(picture.now().isPresent() ? "board.now" : "board")), board, score, save(),
                wishes(), history());
        changed();
        if (kept == null && picture.now().isEmpty()) {
            aim = picture.unit() ? Aim.FOCUS : Aim.MIXED;
            alternatives.find(sharing).ifPresent(this::put);
        }
    }

    /** As they sit today; new children join the smallest group. */
    private Sharing asNow() {
        Map<String, Integer> groupOf = new TreeMap<>();
        picture.rows().forEach(row -> groupOf.put(row.schoolKey(), 0));
        int groups = picture.now().map(s -> s.groups().size()).orElse(picture.usualGroups());
        picture.now().ifPresent(s -> s.groupOf().forEach((child, group) -> groupOf.replace(child, group)));
        Sharing sharing = new Sharing(groups, groupOf);
        picture.now().ifPresent(s -> {
            s.places().forEach((child, place) -> {
                if (place.pinned() && groupOf.containsKey(child)) {
                    sharing.pin(child);
                }
            });
            s.groups().stream().filter(Group::secondAdult).forEach(g -> sharing.secondAdult(g.number()));
        });
        return sharing;
    }

    private Component controls() {
        Map<String, String> numbers = new LinkedHashMap<>();
        for (int g = 1; g <= MOST_GROUPS; g++) {
            numbers.put(String.valueOf(g), String.valueOf(g));
        }
        Anchor tomorrow = new Anchor("groups/tomorrow", words.say("to-tomorrow"));
        tomorrow.addClassName("button");
        NativeButton suggest = Parts.button(words.say("suggest"), this::suggest);
        suggest.addClassName("strong");
        Div row = new Div(Parts.choice(words.say("how-many"), numbers, String.valueOf(sharing.groups()), key -> {
            sharing = new Sharing(Integer.parseInt(key), sharing.groupOf());
            board.show(sharing);
            changed();
        }), suggest, tomorrow);
        row.addClassNames("row", "board-tools");
        return row;
    }

    private void suggest() {
        alternatives.find(sharing);
    }

    private void take(Aim other, Grouping grouping) {
        aim = other;
        put(grouping);
        Parts.say(message, words.say("taken"));
    }

    private void put(Grouping grouping) {
        Sharing fresh = new Sharing(sharing.groups(), grouping.groupOf());
        sharing.pinned().forEach(fresh::pin);
        sharing.secondAdult().forEach(fresh::secondAdult);
        sharing = fresh;
        board.show(sharing);
        changed();
    }

    private GroupingTask task() {
        return picture.task(sharing.groups(), aim, Map.of(), sharing.secondAdult());
    }

    private List<Component> below(int group) {
        List<Component> all = new ArrayList<>(panel.below(task(), sharing.groupOf(), group));
        boolean second = sharing.secondAdult().contains(group);
        NativeButton adult = Parts.button(words.say(second ? "second.here" : "second"), () -> {
            sharing.secondAdult(group);
            board.show(sharing);
            changed();
        });
        adult.getElement().setAttribute("aria-pressed", String.valueOf(second))
                .setAttribute("aria-label", words.say(second ? "second.here" : "second") + ", "
                        + words.say("group", group));
        adult.addClassName("board-adult");
        all.add(adult);
        return all;
    }

    private void changed() {
        score.removeAll();
        score.add(panel.all(task(), sharing.groupOf()));
    }

    private Component save() {
        NativeButton save = Parts.button(words.say("save"), this::keep);
        save.addClassName("strong");
        Div row = new Div(Parts.input(words.say("from-day"), "date", on, text -> on = text), save);
        row.addClassNames("row", "board-tools");
        message.removeAll();
        return new Div(row, message);
    }

    private void keep() {
        LocalDate day;
        try {
            day = LocalDate.parse(on);
        } catch (DateTimeParseException wrong) {
            Parts.say(message, words.say("save.no-day"));
            return;
        }
        if (day.isBefore(picture.day())) {
            Parts.say(message, words.say("save.past"));
            return;
        }
        GroupingTask task = task();
        Map<String, String> reasons = panel.reasons(task, sharing.groupOf());
        Map<String, Place> places = new TreeMap<>();
        sharing.groupOf().forEach((child, group) -> places.put(child, new Place(group,
                sharing.pinned().contains(child), reasons.getOrDefault(child, ""))));
        List<Group> groups = GroupScore.of(task, sharing.groupOf()).tables().stream().map(t -> new Group(t.group(),
                skill(t), "", sharing.secondAdult().contains(t.group()))).toList();
        groupings.save(room.classId(), day, picture.unit() && aim != Aim.MIXED ? Kind.GROUPS : Kind.START, groups,
                places);
        picture = groupings.picture(room.classId());
        draw(sharing);
        Parts.say(message, words.say("saved", words.day(day)));
    }

    /** The skill most of a group work on; {@code null} when none is known. */
    private @Nullable String skill(GroupScore.Table table) {
        Map<String, Integer> count = new TreeMap<>();
        table.children().forEach(id -> {
            var child = picture.child(id);
            if (child != null && child.focus() != null) {
                count.merge(child.focus(), 1, Integer::sum);
            }
        });
        return count.entrySet().stream().max(Map.Entry.<String, Integer>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey(java.util.Comparator.reverseOrder())))
                .map(Map.Entry::getKey).orElse(null);
    }

    private Component wishes() {
        return new NativeDetails(words.say("wishes", picture.wishes().size()),
                new WishesPanel(picture, this::wish));
    }

    private void wish(Wish wish, boolean holds) {
        groupings.wish(room.classId(), wish, holds);
        picture = groupings.picture(room.classId());
        draw(sharing);
        Parts.say(message, words.say(holds ? "wish.made" : "wish.taken-back"));
    }

    private Component history() {
        Div list = new Div();
        for (Seating one : groupings.history(room.classId())) {
            list.add(new Paragraph(words.say("history.line", words.day(one.forOn()),
                    words.say("kind." + one.kind()), one.groups().size(), one.savedBy(),
                    words.moment(one.savedAt().atOffset(java.time.ZoneOffset.UTC)))));
        }
        if (list.getChildren().findAny().isEmpty()) {
            list.add(Parts.soft(words.say("history.none")));
        }
        return new NativeDetails(words.say("history"), list);
    }
}
