package org.stepwell.report;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.csv.CsvWriter;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** The report on a child as a page to print and as a table. */
@RestController
class ReportController {
    private final ReportService reports;
    private final RosterService roster;
    private final AccessRecordService record;

    ReportController(ReportService reports, RosterService roster, AccessRecordService record) {
        this.reports = reports;
        this.roster = roster;
        this.record = record;
    }

    @GetMapping("/api/children/{child}/report.pdf")
    ResponseEntity<byte[]> pdf(@PathVariable String child, @RequestParam(defaultValue = "en") Language lang,
            @RequestParam(defaultValue = "letter") Paper paper) {
        byte[] pdf = new ReportPaper(reports.report(seen(child)), lang, paper).pdf();
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_PDF).cacheControl(CacheControl.noStore())
                .header("Content-Disposition", "inline; filename=\"report.pdf\"").body(pdf);
    }

    /** The looks of the report, one a line; cells that a spreadsheet would run are made harmless. */
    @GetMapping("/api/children/{child}/report.csv")
    ResponseEntity<byte[]> csv(@PathVariable String child) {
        TeamReport report = reports.report(seen(child));
        CsvWriter out = new CsvWriter(List.of("day", "skill", "title", "task", "step", "expected_today", "help", "kind",
                "adult", "tags", "note"));
        report.looks().forEach(look -> out.row(look.day(), look.skill(), look.skill() == null ? null
                : report.progression().titles().get(look.skill()), look.task(), look.step(),
                look.skill() == null ? null : report.due().get(look.skill()), look.help().code(), look.kind().code(),
                report.adults().getOrDefault(look.observer(), look.observer()),
                String.join(";", look.tags().stream().sorted().toList()), look.note()));
        report.statements().forEach(statement -> out.row(statement.on(), null, null, null, null, null, null,
                "family_statement", null, null, statement.words()));
        return ResponseEntity.ok().contentType(new MediaType("text", "csv", StandardCharsets.UTF_8))
                .cacheControl(CacheControl.noStore())
                .header("Content-Disposition", "attachment; filename=\"report.csv\"")
                .body(out.toString().getBytes(StandardCharsets.UTF_8));
    }

    private UUID seen(String child) {
        return roster.byKey(child).map(ChildRow::childId).orElseGet(() -> {
            record.denied(child, Seen.REPORT_PRINT);
            throw new NotVisible();
        });
    }
}
