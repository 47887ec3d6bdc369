package org.stepwell.table.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.PaperMarks;
import org.stepwell.core.progression.Progression;
import org.stepwell.pacing.LessonService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.table.PaperService;

/** A clipboard page to print, and typing one in: a line per child, letters and numbers as they stand on the paper. */
@Route("paper")
@Menu(order = 130, title = "paper.title")
@PermitAll
class PaperView extends Div implements HasDynamicTitle {
    private final Words texts = Words.of("paper");
    private final PaperService papers;
    private final RosterService roster;
    private final Progression progression;
    private final Div message = new Div();
    private final Div content = new Div();
    private final Map<UUID, String> typed = new HashMap<>();
    private Classroom room;
    private UUID page = UUID.randomUUID();
    private String skill = "";
    private String day;
    private String task = "";
    private boolean cubes;

    @SuppressWarnings("NullAway.Init")
    PaperView(RosterService roster, ProgressionService progressions, LessonService lessons, PaperService papers,
            CurrentAdult current) {
        this.papers = papers;
        this.roster = roster;
        this.day = current.today().toString();
        add(new H1(texts.say("title")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            progression = new Progression("", List.of(), List.of());
            add(ClassChoice.none());
            return;
        }
        room = ClassChoice.of(classes);
        progression = progressions.ofClass(room.classId());
        add(ClassChoice.line(classes), Parts.soft(texts.say("about")));
        if (progression.skills().isEmpty()) {
            add(Parts.soft(texts.say("no-skills")));
            return;
        }
        skill = lessons.skillInHand(room.classId()).orElseGet(() -> progression.skills().getFirst().code());
        add(message, content);
        draw();
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    private void draw() {
        content.removeAll();
        Map<String, String> skills = new LinkedHashMap<>();
        progression.skills().forEach(s -> skills.put(s.code(), s.code() + " " + s.title()));
        Div top = new Div(Parts.choice(texts.say("skill"), skills, skill, value -> {
            skill = value;
            draw();
        }), Parts.sheetOut("/api/table/" + room.classId() + "/clipboard.pdf?skill=" + skill + "&lang="
                + Words.language().code(), texts.say("print")), Parts.input(texts.say("day"), "date", day, value -> day = value),
                Parts.input(texts.say("number"), "text", task, value -> task = value),
                Parts.toggle(texts.say("cubes"), cubes, on -> cubes = on));
        top.addClassName("row");
        UnorderedList key = new UnorderedList();
        PaperMarks.letters(progression, skill, Words.language().code()).forEach(letter -> key.add(new ListItem(
                letter.letter() + " · " + (letter.text().isEmpty() ? texts.say("not-yet") : letter.text()))));
        Div rows = new Div();
        for (ChildRow child : roster.children(room.classId())) {
            rows.add(Parts.input(child.label(), "text", typed.getOrDefault(child.childId(), ""),
                    value -> typed.put(child.childId(), value)));
        }
        rows.addClassName("row");
        NativeButton save = Parts.button(texts.say("save"), this::save);
        save.addClassName("strong");
        content.add(top, key, Parts.soft(texts.say("how")), rows, save);
    }

    private void save() {
        try {
            int stored = papers.store(room.classId(), page, LocalDate.parse(day), skill, task, cubes, typed);
            typed.clear();
            page = UUID.randomUUID();
            draw();
            Parts.say(message, texts.say("saved", stored));
        } catch (DateTimeParseException wrong) {
            Parts.say(message, Words.told(new Refused("day.none", day)));
        } catch (IllegalArgumentException wrong) {
            Parts.say(message, Words.told(wrong));
        }
    }
}
