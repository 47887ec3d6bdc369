package org.stepwell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.caseload.ShareService;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.wording.Language;
import org.stepwell.observation.ApiClient;
import org.stepwell.observation.ObservationService;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.roster.ChildRow;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=report"})
class TeamReportTest extends OnTheSample {
    @Autowired
    private ReportService reports;
    @Autowired
    private ObservationService observations;
    @Autowired
    private PlanService plans;
    @Autowired
    private ShareService shares;
    @Autowired
    private AccessRecordService record;
    @LocalServerPort
    private int port;

    private void look(ChildRow child, String note) {
        assertThat(observations.record(List.of(new Look(UUID.randomUUID(), today.atTime(0, 0, 1)
                .atZone(ZONE).toOffsetDateTime(), child.schoolKey(), "T05", "17", 2, Help.CUBES,
                Kind.TABLE, "", Set.of(), note, null, false, null)), true)).allMatch(t -> t.reason() == null);
    }

    private String text(TeamReport report, Language language, Paper paper, String file) throws Exception {
        byte[] pdf = new ReportPaper(report, language, paper).pdf();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).as("tagged").isTrue();
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo(language.code());
            ImageIO.write(new PDFRenderer(document).renderImageWithDPI(0, 80), "png",
                    Path.of("target", file + ".png").toFile());
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    /** Headed as classroom observations; looks, plan, sessions, decisions and cautions are there, no other child is. */
    @Test
    void gathersWhatIsKnownAndNamesNoOtherChild() throws Exception {
        ChildRow ruby = child("Ruby");
        plans.start(ruby.childId(), true, new PlanTerms(today, "T08", 1, 3, 80, today.plusWeeks(8), "Ms. Dunmore", 3, 20,
                today.plusWeeks(4), "ten frames"));
        look(ruby, "Copied from Devika, then alone.");
        look(ruby, "Kept on by tens today.");
        for (Language language : Language.values()) {
            for (Paper paper : Paper.values()) {
                String text = text(reports.report(ruby.childId()), language, paper, "report-" + language + "-" + paper);
                assertThat(text).contains("Ruby", "Room 6", "T08", "Ms. Dunmore", "Kept on by tens today.", "300.309(b)(2)",
                        "300.311");
                assertThat(text).startsWith(language == Language.ENGLISH
                        ? "Classroom observations, not a standardized test." : "Observaciones del aula, no una prueba");
                roster.otherNames(ruby.childId()).forEach(other -> assertThat(text).doesNotContainPattern(
                        "(?<!\\p{L})" + java.util.regex.Pattern.quote(other) + "(?!\\p{L})"));
                assertThat(text).contains(language == Language.ENGLISH ? "another child: 1" : "otro niño: 1");
                assertThat(text).contains(language == Language.ENGLISH
                        ? "Waiting for more looks is no reason to delay" : "una evaluación");
                assertThat(text).as("dates with the year").contains(String.valueOf(today.getYear()));
            }
        }
        assertThat(record.lines(ruby.childId(), 100)).anyMatch(line -> line.what().equals("report_print"));
    }

    @Test
    void aChildHardlySeenGetsAPageThatSaysSo() throws Exception {
        UUID room = child("Ruby").classId();
        UUID fresh = roster.addChild(room, "", "Ilse", "");
        assertThat(text(reports.report(fresh), Language.ENGLISH, Paper.LETTER, "report-empty"))
                .contains("Nothing was seen yet.", "No look counts yet.", "No plan was written.", "None yet in this unit.");
    }

    @Test
    void whoeverSeesTheChildGetsItWithoutWhatIsNotShared() {
        ChildRow mei = child("Mei");
        plans.start(mei.childId(), true, new PlanTerms(today, "T05", 2, 4, 80, today.plusWeeks(8), "Ms. Dunmore", 3, 20,
                today.plusWeeks(4), "ten frames"));
        ApiClient specialist = new ApiClient(port);
        specialist.signIn("specialist@sample", PASSWORD);
        String path = "/api/children/" + mei.schoolKey() + "/report.";
        assertThat(specialist.get(path + "pdf").statusCode()).isEqualTo(404);
        assertThat(specialist.get(path + "csv").statusCode()).isEqualTo(404);
        assertThat(record.lines(mei.childId(), 10)).anyMatch(l -> !l.given() && l.what().equals("report_print"));
        UUID adult = as("specialist@sample").adultId();
        as("teacher@sample");
        shares.share(mei.classId(), Set.of(mei.childId()), adult, false, false, "help", today);
        assertThat(specialist.get(path + "pdf").statusCode()).isEqualTo(200);
        HttpResponse<String> csv = specialist.get(path + "csv");
        assertThat(csv.statusCode()).isEqualTo(200);
        assertThat(csv.body().getBytes(StandardCharsets.UTF_8)).isNotEmpty();
        assertThat(csv.body().lines().findFirst().orElseThrow())
                .isEqualTo("day,skill,title,task,step,expected_today,help,kind,adult,tags,note");
        assertThat(specialist.get(path + "pdf?lang=fr").statusCode()).isEqualTo(400);
        as("specialist@sample");
        assertThat(reports.report(mei.childId()).plans()).isEmpty();
        assertThat(reports.report(mei.childId()).plansShared()).isFalse();
    }

    @Test
    void aNoteThatASpreadsheetWouldRunIsMadeHarmless() {
        ChildRow kenji = child("Kenji");
        look(kenji, "=HYPERLINK(\"http://x\")");
        ApiClient teacher = new ApiClient(port);
        teacher.signIn("teacher@sample", PASSWORD);
        assertThat(teacher.get("/api/children/" + kenji.schoolKey() + "/report.csv").body())
                .contains("\"'=HYPERLINK(\"\"http://x\"\")\"");
    }
}
