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
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import com.vaadin.flow.server.streams.UploadHandler;
import jakarta.annotation.security.PermitAll;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.pacing.ui.PacingPanel;
import org.stepwell.platform.csv.CsvProblem;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.review.ui.FileIntake.DryRun;
import org.stepwell.review.ui.FileIntake.Kind;
import org.stepwell.roster.AdultService;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.EnrolmentService;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.AdultsPanel;
import org.stepwell.roster.ui.ChildrenPanel;
import org.stepwell.roster.ui.ClassChoice;

/** Who is in the class, and files in and out: always tried dry first, every bad row named. */
@Route("files")
@Menu(order = 510, title = "files.title")
@PermitAll
class FilesView extends Div implements HasDynamicTitle {
    private static final int LARGEST = 20 * 1024 * 1024;
    private static final int PROBLEMS_SHOWN = 200;

    private final RosterService roster;
    private final EnrolmentService enrolments;
    private final AdultService adults;
    private final PacingService pacing;
    private final ProgressionService progressions;
    private final CurrentAdult adult;
    private final FileIntake intake;
    private final Words texts = Words.of("files");
    private final Div body = new Div();
    private final Div result = new Div();
    private final Div unitSaid = new Div();
    private Kind kind = Kind.ROSTER;
    private byte @Nullable [] skills;
    private byte @Nullable [] phrases;

    FilesView(RosterService roster, EnrolmentService enrolments, AdultService adults, PacingService pacing,
            ProgressionService progressions, CurrentAdult adult, FileIntake intake) {
        this.roster = roster;
        this.enrolments = enrolments;
        this.adults = adults;
        this.pacing = pacing;
        this.progressions = progressions;
        this.adult = adult;
        this.intake = intake;
        add(new H1(texts.say("title")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        add(ClassChoice.line(classes), body);
        show(ClassChoice.of(classes));
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    private void show(Classroom room) {
        body.removeAll();
        result.removeAll();
        unitSaid.removeAll();
        body.add(people(room));
        if (roster.seesWhole(room.classId())) {
            body.add(unit(room));
        }
        body.add(files(room), exports(room));
    }

    private Component files(Classroom room) {
        Map<String, String> kinds = new LinkedHashMap<>();
        for (Kind each : Kind.values()) {
            kinds.put(each.name(), texts.say("kind." + each.name().toLowerCase(Locale.ROOT)));
        }
        Upload upload = new Upload(UploadHandler.inMemory((about, bytes) -> tried(room, bytes)));
        upload.setDropAllowed(false);
        upload.setMaxFileSize(LARGEST);
        upload.setAcceptedFileTypes(".csv");
        upload.addFileRejectedListener(refused -> Parts.say(result, texts.say("in.refused")));
        upload.setI18n(UploadWords.of(texts));
        return Parts.sheet(new H2(texts.say("in")), Parts.soft(texts.say("in.tried-first")),
                Parts.choice(texts.say("in.kind"), kinds, kind.name(), key -> {
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
            Parts.say(result, texts.say(skills == null ? "in.now-skills" : "in.now-phrases"));
        }
    }

    private void found(Classroom room, DryRun found) {
        Parts.say(result, texts.say("in.found", found.good(), found.problems().size()));
        found.remarks().forEach(remark -> result.add(new Paragraph(remark)));
        UnorderedList problems = new UnorderedList();
        problems.addClassName("problems");
        found.problems().stream().limit(PROBLEMS_SHOWN).forEach(p -> problems.add(new ListItem(words(p))));
        if (!found.problems().isEmpty()) {
            result.add(problems);
        }
        if (found.problems().size() > PROBLEMS_SHOWN) {
            result.add(new Paragraph(texts.say("in.more", found.problems().size() - PROBLEMS_SHOWN)));
        }
        if (found.good() > 0) {
            result.add(Parts.button(texts.say(found.problems().isEmpty() ? "in.take" : "in.take-rest"),
                    () -> act(room, result, found.take())));
        }
    }

    private String words(CsvProblem problem) {
        String reason = Words.told(problem.reason());
        if (problem.line() == 0) {
            return reason;
        }
        String line = Long.toString(problem.line());
        return problem.column().isEmpty() ? texts.say("in.line", line, reason)
                : texts.say("in.line-column", line, problem.column(), reason);
    }

    private void act(Classroom room, Div place, Supplier<List<String>> what) {
        try {
            List<String> said = what.get();
            show(room);
            Parts.say(place, said.getFirst());
            said.stream().skip(1).forEach(line -> place.add(new Paragraph(line)));
        } catch (NotVisible closed) {
            Parts.say(place, texts.say("only-adults"));
        } catch (IllegalArgumentException wrong) {
            Parts.say(place, Words.told(wrong));
        }
    }

    private Component exports(Classroom room) {
        Div sheet = Parts.sheet(new H2(texts.say("out")), Parts.soft(texts.say("out.same")));
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
        if (!roster.seesWhole(room.classId())) {
            UnorderedList shared = new UnorderedList();
            roster.children(room.classId()).forEach(child -> shared.add(new ListItem(child.label())));
            return Parts.sheet(new H2(texts.say("shared")), shared, AdultsPanel.password());
        }
        Div people = new Div(
                new ChildrenPanel(enrolments, room, roster.classes(), adult.today()),
                new AdultsPanel(adults, room, adult.get()));
        if (roster.inSample()) {
            Anchor out = new Anchor("sample", texts.say("sample.to"));
            out.addClassName("button");
            people.add(Parts.sheet(new Paragraph(texts.say("sample")), out));
        }
        return people;
    }

    private Component unit(Classroom room) {
        Div sheet = Parts.sheet(new H2(texts.say("unit")), unitSaid);
        Optional<UnitInHand> now = pacing.unit(room.classId());
        sheet.add(now.<Component>map(unit -> new Paragraph(texts.say("unit.since", unit.title(),
                texts.day(unit.startsOn())))).orElseGet(() -> Parts.soft(texts.say("unit.none"))));
        Map<String, String> codes = new LinkedHashMap<>();
        progressions.choices().forEach(code -> codes.put(code, code));
        String running = progressions.ofClass(room.classId()).code();
        String[] code = {codes.containsKey(running) ? running : codes.keySet().iterator().next()};
        String[] title = {""};
        Div row = new Div(Parts.input(texts.say("unit.title"), "text", "", text -> title[0] = text),
                Parts.choice(texts.say("unit.progression"), codes, code[0], key -> code[0] = key),
                Parts.button(texts.say("unit.start-today"), () -> act(room, unitSaid, () -> {
                    if (title[0].isBlank()) {
                        throw new IllegalArgumentException(texts.say("unit.needs-title"));
                    }
                    if (!progressions.provide(code[0])) {
                        throw new IllegalArgumentException(texts.say("unit.no-progression", code[0]));
                    }
                    pacing.startUnit(room.classId(), code[0], title[0].strip(), adult.today());
                    return List.of(texts.say("unit.started", title[0].strip()));
                })));
        row.addClassName("row");
        now.ifPresent(unit -> {
            NativeDetails when = new NativeDetails(texts.say("unit.pacing"), new PacingPanel(pacing, room.classId(),
                    unit, progressions.ofClass(room.classId()), () -> act(room, unitSaid,
                            () -> List.of(texts.say("unit.paced")))));
            when.setOpen(unit.pacing().rows().isEmpty());
            sheet.add(when);
        });
        sheet.add(now.isEmpty() ? row : new NativeDetails(texts.say("unit.start"), row));
        return sheet;
    }
}
