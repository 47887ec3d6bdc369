package org.stepwell.check.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.component.upload.Upload;
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
import java.util.stream.Collectors;
import org.stepwell.check.CheckFiles;
import org.stepwell.check.CheckReport;
import org.stepwell.check.CheckResults;
import org.stepwell.check.CheckResults.CarryOver;
import org.stepwell.check.CheckService;
import org.stepwell.core.check.AgainstTable;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;

/** What a check tells, and what is done with it: let it count, ask again, carry over, take a file in or out. */
@Route("unit-check/:check/results")
@PermitAll
class ResultsView extends CheckPage {
    private static final int LARGEST = 2 * 1024 * 1024;

    private final CheckService checks;
    private final CheckReport report;
    private final CheckFiles files;
    private final ProgressionService progressions;
    private final CurrentAdult current;
    private final Div said = new Div();
    private final Div intake = new Div();

    ResultsView(CheckService checks, CheckReport report, CheckFiles files, ProgressionService progressions,
            CurrentAdult current) {
        this.checks = checks;
        this.report = report;
        this.files = files;
        this.progressions = progressions;
        this.current = current;
    }

    @Override
    void draw() {
        removeAll();
        CheckResults results = report.results(checkId());
        ResultTables tables = new ResultTables(texts, results, progressions.ofClass(checks.classOf(checkId())));
        add(new H1(results.sheet().line().title()), ways());
        if (results.children().isEmpty()) {
            add(Parts.soft(texts.say("results.none")), exchange());
            return;
        }
        add(tables.summary(), evidence(results), apart(results));
        add(new H2(texts.say("results.children")), Parts.soft(texts.say("results.children.about")),
                scrolled(texts.say("results.children"), tables.children()));
        add(new H2(texts.say("results.items")), Parts.soft(texts.say("results.items.about")),
                scrolled(texts.say("results.items"), tables.items()));
        add(carryOver(results), exchange());
    }

    private Component evidence(CheckResults results) {
        Div part = Parts.sheet(new H2(texts.say("evidence")));
        if (results.sheet().line().counted()) {
            part.add(new Paragraph(texts.say("evidence.counted")));
        } else {
            Component count = Parts.button(texts.say("evidence.count"), () -> {
                checks.count(checkId());
                draw();
            });
            count.addClassName("strong");
            part.add(new Paragraph(texts.say("evidence.about")), count);
        }
        part.add(Parts.soft(texts.say("evidence.alone")));
        Div row = new Div(Parts.button(texts.say("retake"), () -> retake(results)));
        row.addClassName("row");
        part.add(row, Parts.soft(texts.say("retake.about")), said);
        return part;
    }

    private void retake(CheckResults results) {
        try {
            UI.getCurrent().navigate(ScoreView.class, of(checks.retake(checkId(),
                    texts.say("retake.title", results.sheet().line().title()), current.today())));
        } catch (IllegalArgumentException nothing) {
            Parts.say(said, texts.say("retake.nobody"));
        }
    }

    private Component apart(CheckResults results) {
        UnorderedList list = new UnorderedList();
        for (CheckResults.OneChild one : results.children()) {
            for (AgainstTable apart : one.apart()) {
                list.add(new ListItem(texts.say(apart.checkSaysMore() ? "apart.more" : "apart.less",
                        one.child().label(), apart.skill(), apart.right(), apart.reached(), apart.meeting(),
                        apart.days())));
            }
        }
        boolean none = list.getChildren().findAny().isEmpty();
        return Parts.sheet(new H2(texts.say("apart")), none ? Parts.soft(texts.say("apart.none")) : list,
                Parts.soft(texts.say("apart.about")));
    }

    private Component carryOver(CheckResults results) {
        Map<String, Map<CheckResults.Why, List<String>>> bySkill = results.carryOver().stream().collect(
                Collectors.groupingBy(CarryOver::skill, LinkedHashMap::new, Collectors.groupingBy(CarryOver::why,
                        LinkedHashMap::new, Collectors.mapping(c -> c.child().label(), Collectors.toList()))));
        Div part = Parts.sheet(new H2(texts.say("carry")), Parts.soft(texts.say("carry.about")));
        if (bySkill.isEmpty()) {
            part.add(new Paragraph(texts.say("carry.none")));
        }
        bySkill.forEach((skill, reasons) -> {
            UnorderedList list = new UnorderedList();
            reasons.forEach((why, names) -> list.add(new ListItem(texts.say(
                    "carry." + why.name().toLowerCase(Locale.ROOT).replace('_', '-'), String.join(", ", names)))));
            Paragraph head = new Paragraph(skill);
            head.addClassName("head");
            part.add(head, list);
        });
        return part;
    }

    private Component exchange() {
        Anchor out = new Anchor(DownloadHandler.fromInputStream(event -> {
            try {
                byte[] bytes = files.export(checkId()).getBytes(StandardCharsets.UTF_8);
                return new DownloadResponse(new ByteArrayInputStream(bytes), "responses.csv",
                        "text/csv;charset=utf-8", bytes.length);
            } catch (NotVisible closed) {
                return DownloadResponse.error(404);
            }
        }), "responses.csv");
        out.addClassName("button");
        Upload upload = new Upload(UploadHandler.inMemory((about, bytes) -> tried(bytes)));
        upload.setDropAllowed(false);
        upload.setMaxFileSize(LARGEST);
        upload.setAcceptedFileTypes(".csv");
        upload.addFileRejectedListener(refused -> Parts.say(intake, texts.say("files.rejected")));
        Div row = new Div(out, upload);
        row.addClassName("row");
        return Parts.sheet(new H2(texts.say("files")), Parts.soft(texts.say("files.about")), row, intake);
    }

    private void tried(byte[] bytes) {
        intake.removeAll();
        CheckFiles.Intake read = files.read(checkId(), bytes);
        if (!read.problems().isEmpty()) {
            Parts.say(intake, texts.say("files.problems", read.problems().size()));
            UnorderedList list = new UnorderedList();
            read.problems().forEach(problem -> list.add(new ListItem(problem.toString())));
            intake.add(list);
            return;
        }
        intake.add(new Paragraph(texts.say("files.would", read.taps().size())));
        if (!read.taps().isEmpty()) {
            intake.add(Parts.button(texts.say("files.take"), () -> {
                int stored = files.take(checkId(), read);
                draw();
                Parts.say(intake, texts.say("files.taken", stored));
            }));
        }
    }
}
