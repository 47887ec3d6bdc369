package org.stepwell.review.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.OrderedList;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import com.vaadin.flow.server.streams.UploadHandler;
import jakarta.annotation.security.PermitAll;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.stepwell.pacing.PacingService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.review.ui.FileIntake.DryRun;
import org.stepwell.review.ui.FileIntake.Kind;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;

/** Who is in the class, and files in and out: always tried dry first, every bad row named. */
@Route("files")
@PageTitle("People and files · Stepwell")
@Menu(order = 4, title = "People and files")
@PermitAll
class FilesView extends Div {
    private static final int LARGEST = 20 * 1024 * 1024;
    private static final int PROBLEMS_SHOWN = 200;

    private final RosterService roster;
    private final PacingService pacing;
    private final ProgressionService progressions;
    private final CurrentAdult adult;
    private final FileIntake intake;
    private final Div body = new Div();
    private final Div result = new Div();
    private Kind kind = Kind.ROSTER;
    private byte @Nullable [] skills;
    private byte @Nullable [] phrases;

    FilesView(RosterService roster, PacingService pacing, ProgressionService progressions, CurrentAdult adult,
            FileIntake intake) {
        this.roster = roster;
        this.pacing = pacing;
        this.progressions = progressions;
        this.adult = adult;
        this.intake = intake;
        add(new H1("People and files"));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(Parts.soft("No class is shared with you yet."));
            return;
        }
        Map<String, String> names = new LinkedHashMap<>();
        classes.forEach(room -> names.put(room.classId().toString(), room.name()));
        Classroom first = classes.getFirst();
        add(classes.size() == 1 ? Parts.soft(first.name())
                : Parts.choice("Class", names, first.classId().toString(), id -> classes.stream()
                        .filter(c -> c.classId().toString().equals(id)).findFirst().ifPresent(this::show)));
        add(body);
        show(first);
    }

    private void show(Classroom room) {
        body.removeAll();
        result.removeAll();
        body.add(files(room), exports(room), people(room), unit(room));
    }

    private Component files(Classroom room) {
        Map<String, String> kinds = new LinkedHashMap<>();
        for (Kind each : Kind.values()) {
            kinds.put(each.name(), each.file());
        }
        Upload upload = new Upload(UploadHandler.inMemory((about, bytes) -> tried(room, bytes)));
        upload.setDropAllowed(false);
        upload.setMaxFileSize(LARGEST);
        upload.setAcceptedFileTypes(".csv");
        upload.addFileRejectedListener(refused -> Parts.say(result, refused.getErrorMessage()
                + " A CSV file of at most 20 MB is read."));
        return Parts.sheet(new H2("Take a file in"),
                Parts.soft("It is tried first; nothing is stored until you say so."),
                Parts.choice("File", kinds, kind.name(), key -> {
                    kind = Kind.valueOf(key);
                    skills = null;
                    phrases = null;
                    result.removeAll();
                }), upload, result);
    }

    private void tried(Classroom room, byte[] bytes) {
        if (kind != Kind.PROGRESSION) {
            found(room, intake.read(kind, room, bytes));
            return;
        }
        if (FileIntake.isSkills(bytes)) {
            skills = bytes;
        } else {
            phrases = bytes;
        }
        if (skills != null && phrases != null) {
            found(room, intake.readProgression(skills, phrases));
        } else {
            Parts.say(result, skills == null ? "Read phrases.csv. Now choose skills.csv."
                    : "Read skills.csv. Now choose phrases.csv.");
        }
    }

    private void found(Classroom room, DryRun found) {
        Parts.say(result, "Tried: " + found.good() + " good rows, " + found.problems().size()
                + " problems. Nothing is stored yet.");
        found.remarks().forEach(remark -> result.add(new Paragraph(remark)));
        OrderedList problems = new OrderedList();
        found.problems().stream().limit(PROBLEMS_SHOWN).forEach(p -> problems.add(new ListItem(p.toString())));
        if (!found.problems().isEmpty()) {
            result.add(problems);
        }
        if (found.problems().size() > PROBLEMS_SHOWN) {
            result.add(new Paragraph("And " + (found.problems().size() - PROBLEMS_SHOWN) + " more."));
        }
        if (found.good() > 0) {
            result.add(Parts.button(found.problems().isEmpty() ? "Take it in" : "Take in all but the reported rows",
                    () -> act(room, found.take())));
        }
    }

    private void act(Classroom room, Supplier<String> what) {
        try {
            String said = what.get();
            show(room);
            String[] lines = said.split("\n");
            Parts.say(result, lines[0]);
            for (int i = 1; i < lines.length; i++) {
                result.add(new Paragraph(lines[i]));
            }
        } catch (NotVisible closed) {
            Parts.say(result, "Only an adult of the class may do this, and only for its children. Nothing was stored.");
        } catch (IllegalArgumentException wrong) {
            Parts.say(result, String.valueOf(wrong.getMessage()));
        }
    }

    private Component exports(Classroom room) {
        Div sheet = Parts.sheet(new H2("Take files out"),
                Parts.soft("The same formats; they can be taken in again to an equal state."));
        Div row = new Div();
        row.addClassName("row");
        intake.exports(room).forEach((name, text) -> {
            Anchor anchor = new Anchor(DownloadHandler.fromInputStream(event -> {
                try {
                    byte[] bytes = text.get().getBytes(StandardCharsets.UTF_8);
                    return new DownloadResponse(new ByteArrayInputStream(bytes), name, "text/csv;charset=utf-8",
                            bytes.length);
                } catch (NotVisible closed) {
                    return DownloadResponse.error(404);
                }
            }), name);
            anchor.addClassName("button");
            row.add(anchor);
        });
        sheet.add(row);
        return sheet;
    }

    private Component people(Classroom room) {
        List<ChildRow> children = roster.children(room.classId());
        OrderedList list = new OrderedList();
        children.forEach(child -> list.add(new ListItem((child.givenName() + " " + child.familyName()).strip() + " ("
                + child.schoolKey() + ")")));
        String[] given = {""};
        String[] family = {""};
        String[] id = {""};
        Div row = new Div(Parts.input("Given name", "text", "", text -> given[0] = text),
                Parts.input("Family name", "text", "", text -> family[0] = text),
                Parts.input("School's id, if there is one", "text", "", text -> id[0] = text),
                Parts.button("Add child", () -> act(room, () -> {
                    roster.addChild(room.classId(), id[0], given[0], family[0]);
                    return given[0].strip() + " was added.";
                })));
        row.addClassName("row");
        return Parts.sheet(new H2("Children"), row, new NativeDetails(children.size() + " in the class", list));
    }

    private Component unit(Classroom room) {
        Div sheet = Parts.sheet(new H2("Unit"));
        pacing.unit(room.classId()).ifPresentOrElse(
                unit -> sheet.add(new Paragraph(unit.title() + ", since " + unit.startsOn())),
                () -> sheet.add(Parts.soft("None yet. Take a progression in, then start a unit on it.")));
        String[] title = {""};
        String now = progressions.ofClass(room.classId()).code();
        String[] code = {progressions.known(now) ? now : ""};
        Div row = new Div(Parts.input("Title", "text", "", text -> title[0] = text),
                Parts.input("Progression", "text", code[0], text -> code[0] = text),
                Parts.button("Start a new unit today", () -> act(room, () -> {
                    if (title[0].isBlank()) {
                        throw new IllegalArgumentException("A unit needs a title.");
                    }
                    if (!progressions.known(code[0].strip())) {
                        throw new IllegalArgumentException("There is no progression \"" + code[0].strip()
                                + "\". Take its two files in first, or write its code as they have it.");
                    }
                    pacing.startUnit(room.classId(), code[0].strip(), title[0].strip(), adult.today());
                    return title[0].strip() + " was started.";
                })));
        row.addClassName("row");
        sheet.add(new NativeDetails("Start a new unit", row));
        return sheet;
    }
}
