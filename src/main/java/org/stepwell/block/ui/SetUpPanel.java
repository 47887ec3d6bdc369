package org.stepwell.block.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.dom.Element;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Consumer;
import org.stepwell.block.BlockPicture;
import org.stepwell.block.BlockService;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.Station;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ClassAdult;
import org.stepwell.roster.Invitations.Role;

/** Stations, minutes, weekdays, and how often each group comes to the teacher. Nothing holds until it is saved. */
class SetUpPanel extends Div {
    private static final List<DayOfWeek> SCHOOL_DAYS = List.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY,
            DayOfWeek.WEDNESDAY, DayOfWeek.THURSDAY, DayOfWeek.FRIDAY);
    private static final LocalTime USUAL_START = LocalTime.of(9, 30);
    private static final String NAMES = "block-adults";
    private static final int USUAL_MINUTES = 10;
    private static final int USUAL_CHANGE = 1;
    private static final int USUAL_ROTATIONS = 5;

    private final Words texts = Words.of("block");
    private final Div stations = new Div();
    private final List<String[]> rows = new ArrayList<>();
    private final Map<DayOfWeek, Integer> rotations = new EnumMap<>(DayOfWeek.class);
    private final TreeMap<Integer, Integer> visits = new TreeMap<>();
    private String minutes;
    private String change;
    private String starts;

    SetUpPanel(UUID classId, BlockPicture picture, List<ClassAdult> adults, BlockService blocks, Consumer<Runnable> tried) {
        BlockPattern pattern = picture.pattern();
        if (pattern == null) {
            for (String name : texts.say("station.usual").split("\\|")) {
                rows.add(new String[] {name, "", ""});
            }
            SCHOOL_DAYS.forEach(day -> rotations.put(day, USUAL_ROTATIONS));
        } else {
            pattern.stations().forEach(s -> rows.add(new String[] {s.name(), s.materials(), s.adult()}));
            rotations.putAll(pattern.rotations());
            visits.putAll(pattern.visits());
        }
        minutes = String.valueOf(pattern == null ? USUAL_MINUTES : pattern.minutes());
        change = String.valueOf(pattern == null ? USUAL_CHANGE : pattern.change());
        starts = String.valueOf(pattern == null ? USUAL_START : pattern.starts());
        drawStations();
        Element names = new Element("datalist").setAttribute("id", NAMES);
        adults.stream().filter(a -> a.role() != Role.LEAD).map(ClassAdult::name).forEach(name ->
                names.appendChild(new Element("option").setAttribute("value", name)));
        getElement().appendChild(names);
        Div times = row(Parts.input(texts.say("minutes"), "number", minutes, value -> minutes = value),
                Parts.input(texts.say("change"), "number", change, value -> change = value),
                Parts.input(texts.say("starts"), "time", starts, value -> starts = value));
        Div days = row();
        SCHOOL_DAYS.forEach(day -> days.add(Parts.choice(day.getDisplayName(TextStyle.FULL, texts.locale()),
                numbers(0, BlockPattern.MOST_ROTATIONS), String.valueOf(rotations.getOrDefault(day, 0)),
                value -> rotations.put(day, Integer.parseInt(value)))));
        NativeButton save = Parts.button(texts.say("save"), () -> tried.accept(() -> blocks.setUp(classId, pattern())));
        save.addClassName("strong");
        add(Parts.soft(texts.say("station.adult.about")), stations, times, new H3(texts.say("days")), days);
        if (picture.size() > 0) {
            Map<String, String> often = new LinkedHashMap<>();
            often.put("0", texts.say("visits.daily"));
            for (int n = 1; n <= 4; n++) {
                often.put(String.valueOf(n), texts.say("visits.times", n));
            }
            Div groups = row();
            for (int group = 1; group <= picture.size(); group++) {
                int number = group;
                groups.add(Parts.choice(texts.say("group", group), often,
                        String.valueOf(visits.getOrDefault(group, 0)), value -> often(number, Integer.parseInt(value))));
            }
            add(new H3(texts.say("visits")), groups);
        }
        add(row(save));
    }

    private static Div row(Component... inside) {
        Div row = new Div(inside);
        row.addClassNames("row", "block-small");
        return row;
    }

    private void often(int group, int times) {
        if (times == 0) {
            visits.remove(group);
        } else {
            visits.put(group, times);
        }
    }

    static Map<String, String> numbers(int from, int to) {
        Map<String, String> numbers = new LinkedHashMap<>();
        for (int n = from; n <= to; n++) {
            numbers.put(String.valueOf(n), String.valueOf(n));
        }
        return numbers;
    }

    private void drawStations() {
        stations.removeAll();
        for (int i = 0; i < rows.size(); i++) {
            String[] own = rows.get(i);
            String label = i == 0 ? texts.say("station.teacher") : texts.say("station", i + 1);
            Div line = new Div(Parts.input(label + ": " + texts.say("station.name"), "text", own[0], v -> own[0] = v),
                    Parts.input(texts.say("station.materials"), "text", own[1], v -> own[1] = v),
                    offered(Parts.input(texts.say("station.adult"), "text", own[2], v -> own[2] = v)));
            if (i > 0 && rows.size() > 2) {
                line.add(Parts.button(texts.say("station.remove"), () -> {
                    rows.remove(own);
                    drawStations();
                }));
            }
            line.addClassName("block-station");
            stations.add(line);
        }
        stations.add(Parts.button(texts.say("station.add"), () -> {
            rows.add(new String[] {"", "", ""});
            drawStations();
        }));
    }

    /** The names of the class's adults are offered; any other name may be written. */
    private static Div offered(Div field) {
        field.getElement().getChildren().filter(e -> e.getTag().equals("input")).forEach(e -> e.setAttribute("list", NAMES));
        return field;
    }

    private BlockPattern pattern() {
        return new BlockPattern(rows.stream().map(r -> new Station(r[0], r[1], r[2])).toList(),
                whole(minutes, "block.minutes"), whole(change, "block.change"), BlockView.time(starts), rotations,
                visits);
    }

    private static int whole(String text, String otherwise) {
        try {
            return Integer.parseInt(text.strip());
        } catch (NumberFormatException wrong) {
            throw new Refused(otherwise, text);
        }
    }
}
