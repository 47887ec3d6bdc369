package org.stepwell.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.UUID;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.wording.Language;
import org.stepwell.observation.ApiClient;
import org.stepwell.privacy.FamilyRequest;
import org.stepwell.privacy.FamilyRequest.Happened;
import org.stepwell.privacy.FamilyRequest.Kind;
import org.stepwell.privacy.FamilyRequestService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.records.Erasure.Why;

/**
 * Amendment as 34 CFR 99.20 (request and decision), 99.21 (hearing, statement) and 99.21 (c) (the statement goes where the
 * record goes) describe it.
 */
@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=family-requests"})
class FamilyRequestTest extends OnTheSample {
    private static final String STATEMENT = "She counted the cubes in twos, which nobody wrote down.";

    @LocalServerPort
    private int port;
    @Autowired
    private FamilyRequestService requests;
    @Autowired
    private ErasureService erasure;
    @Autowired
    private RecordsService records;

    private UUID child(int which) {
        return roster.byKey("q060" + which).orElseThrow().childId();
    }

    private FamilyRequest only(UUID child) {
        return requests.requests(child).getFirst();
    }

    private void happens(UUID child, Happened what, String words) {
        FamilyRequest request = only(child);
        requests.happened(child, request.requestId(), request.steps().size(), what, today, words);
    }

    private String bundlePdf(String key, Language language) throws IOException {
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(records.bundle(key, RecordsService.Purpose.INSPECT, language)))) {
            assertThat(in.getNextEntry().getName()).isEqualTo("index.pdf");
            return text(in.readAllBytes());
        }
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void aRefusedAmendmentEndsInAStatementThatGoesWhereTheRecordGoes() throws IOException {
        UUID child = child(2);
        ApiClient teacher = new ApiClient(port);
        teacher.signIn("teacher@sample", PASSWORD);
        assertThat(bundlePdf("q0602", Language.ENGLISH)).doesNotContain("Statement of the family");
        requests.ask(child, Kind.AMEND, today.minusDays(2), "The look of Monday says step 1.");
        assertThat(only(child).open()).isTrue();
        as("lead@sample");
        assertThatThrownBy(() -> erasure.erase(child, "q0602", Why.FAMILY_ASKED)).isInstanceOf(Refused.class)
                .hasMessageContaining("open");
        assertThatThrownBy(() -> happens(child, Happened.STATEMENT, STATEMENT)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> happens(child, Happened.REFUSED, " ")).isInstanceOf(Refused.class);
        happens(child, Happened.REFUSED, "Two adults saw it.");
        assertThat(only(child).open()).isFalse();
        happens(child, Happened.HEARING_ASKED, "");
        assertThat(only(child).open()).as("while the hearing is owed").isTrue();
        happens(child, Happened.HEARING_REFUSED, "The record is neither wrong nor misleading.");
        happens(child, Happened.STATEMENT, STATEMENT);
        assertThat(only(child).open()).isFalse();

        as("teacher@sample");
        assertThat(bundlePdf("q0602", Language.ENGLISH)).contains("Statement of the family", STATEMENT);
        assertThat(bundlePdf("q0602", Language.SPANISH)).contains("Declaración de la familia", STATEMENT);
        assertThat(teacher.get("/api/children/q0602/report.csv").body()).contains("family_statement", STATEMENT);
        assertThat(teacher.get("/api/children/q0603/report.csv").body()).doesNotContain("family_statement");
        as("specialist@sample");
        assertThat(requests.statements(child)).singleElement().satisfies(s -> assertThat(s.words())
                .isEqualTo(STATEMENT));
    }

    @Test
    void classAdultsWriteDownWhatIsAskedAndALeadDecides() {
        UUID child = child(4);
        assertThatThrownBy(() -> requests.ask(child, Kind.AMEND, today, " ")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> requests.ask(child, Kind.INSPECT, today.plusDays(1), "")).isInstanceOf(Refused.class);
        requests.ask(child, Kind.INSPECT, today, "");
        assertThat(requests.decides(child)).isFalse();
        assertThatThrownBy(() -> happens(child, Happened.INSPECTED, "")).isInstanceOf(NotVisible.class);
        UUID other = as("specialist@sample").adultId();
        assertThat(other).isNotNull();
        assertThatThrownBy(() -> requests.requests(child)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> requests.ask(child, Kind.INSPECT, today, "")).isInstanceOf(NotVisible.class);
        as("lead@sample");
        FamilyRequest seen = only(child);
        happens(child, Happened.INSPECTED, "");
        assertThatThrownBy(() -> requests.happened(child, seen.requestId(), 0, Happened.WITHDRAWN, today, ""))
                .as("a second answer to what was seen open").isInstanceOf(Refused.class)
                .hasMessageContaining("Somebody else");
        assertThatThrownBy(() -> requests.happened(child(2), seen.requestId(), 1, Happened.WITHDRAWN, today, ""))
                .as("under another child").isInstanceOf(NotVisible.class);
    }
}
