package org.stepwell.conference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpResponse;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestAdult;
import org.stepwell.TestDatabase;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HomeNote;
import org.stepwell.core.wording.home.HomeNote.Part;
import org.stepwell.core.wording.home.ReadingEase;
import org.stepwell.core.wording.home.WordGuard;
import org.stepwell.observation.ApiClient;
import org.stepwell.platform.pdf.PdfDocument.Paper;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class HomeNoteTest {
    private static final String PASSWORD = "a-password-of-the-tests";

    @LocalServerPort
    private int port;
    @Autowired
    private HomeNoteService notes;
    @Autowired
    private RosterService roster;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    private final JsonMapper json = JsonMapper.builder().build();

    @BeforeEach
    void signsTheTeacherIn() {
        as("teacher@sample");
    }

    private void as(String signIn) {
        TestAdult.signIn(jdbc, transaction, signIn);
    }

    @AfterEach
    void signsOut() {
        TestAdult.signOut();
    }

    private List<ChildRow> children() {
        return roster.children(roster.classes().getFirst().classId());
    }

    private static String text(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The whole sample class, both languages: one sheet each, tagged, with the child's name and nobody else's. */
    @Test
    void everyChildsPageIsOneTaggedSheetAboutThatChildAlone() throws IOException {
        for (ChildRow child : children()) {
            for (Language language : Language.values()) {
                HomePage page = new HomePage(child.givenName(), "Room 6", "Imogen Castellane", LocalDate.of(2026, 5, 8),
                        true, notes.draft(child.childId(), language), others(child));
                byte[] pdf = page.pdf(Paper.LETTER, false);
                try (PDDocument document = Loader.loadPDF(pdf)) {
                    assertThat(document.getNumberOfPages()).as(child.label()).isEqualTo(1);
                    assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
                    assertThat(document.getDocumentCatalog().getStructureTreeRoot()).isNotNull();
                    assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo(language.code());
                    assertThat(document.getDocumentInformation().getTitle()).isNotBlank();
                }
                String words = text(pdf);
                assertThat(words).contains(child.givenName());
                assertThat(WordGuard.of(language).find(words, Set.of(child.givenName(), page.adult()), others(child),
                        Set.of("T01", "T05", "T08"))).as(words).isEmpty();
                assertThat(ReadingEase.of(page.note().text(), language).easyEnough(language))
                        .as(page.note().text()).isTrue();
            }
        }
    }

    private Set<String> others(ChildRow child) {
        return children().stream().filter(c -> !c.childId().equals(child.childId()))
                .flatMap(c -> Stream.of(c.givenName(), c.familyName())).collect(Collectors.toSet());
    }

    @Test
    void thePdfIsGivenToThoseWhoMaySeeTheChildAndToNobodyElse() {
        ApiClient teacher = new ApiClient(port);
        teacher.signIn("teacher@sample", PASSWORD);
        ApiClient specialist = new ApiClient(port);
        specialist.signIn("specialist@sample", PASSWORD);
        Set<String> shared = keys(specialist);
        Set<String> all = keys(teacher);
        assertThat(shared).isNotEmpty().isSubsetOf(all).hasSizeLessThan(all.size());
        String hidden = all.stream().filter(key -> !shared.contains(key)).findFirst().orElseThrow();
        assertThat(teacher.get("/api/children/" + hidden + "/note.pdf?lang=es").statusCode()).isEqualTo(200);
        assertThat(teacher.get("/api/children/" + hidden + "/note.pdf").headers().firstValue("content-type"))
                .hasValue("application/pdf");
        assertThat(teacher.get("/api/children/" + hidden + "/note.pdf").headers().firstValue("cache-control"))
                .hasValue("no-store");
        HttpResponse<String> none = teacher.get("/api/children/nobody/note.pdf");
        assertThat(none.statusCode()).isEqualTo(404);
        assertThat(specialist.get("/api/children/" + hidden + "/note.pdf").statusCode()).isEqualTo(404);
        assertThat(told(specialist.get("/api/children/" + hidden + "/note.pdf"))).isEqualTo(told(none));
        assertThat(specialist.get("/api/children/" + shared.iterator().next() + "/note.pdf").statusCode())
                .isEqualTo(200);
        assertThat(new ApiClient(port).get("/api/children/" + hidden + "/note.pdf").statusCode()).isEqualTo(401);
        assertThat(teacher.get("/api/children/" + hidden + "/note.pdf?lang=fr").statusCode()).isEqualTo(400);
        assertThat(teacher.get("/api/children/" + hidden + "/note.pdf?paper=legal").body()).contains("letter or a4");
    }

    /** The answer without the moment and the address that was asked for. */
    private static String told(HttpResponse<String> answer) {
        return answer.body().replaceAll("\"(timestamp|path)\":\"[^\"]*\",?", "");
    }

    private Set<String> keys(ApiClient adult) {
        Set<String> keys = new TreeSet<>();
        for (JsonNode child : json.readTree(adult.get("/api/children").body())) {
            keys.add(child.get("child").stringValue());
        }
        return keys;
    }

    @Test
    void theApprovedVersionGoesHomeUntilALaterOneIsApproved() {
        ChildRow child = children().get(3);
        assertThat(text(notes.page(child.childId(), Language.ENGLISH).pdf(Paper.A4, false))).contains("Draft");
        HomeNote first = notes.draft(child.childId(), Language.ENGLISH).with(Part.CAN, List.of("Counted to fifty."));
        assertThat(notes.keep(child.childId(), first, 0, true, List.of())).isEmpty();
        assertThat(notes.keep(child.childId(), first.with(Part.CAN, List.of("Counted to sixty.")), 1, false,
                List.of())).isEmpty();
        String page = text(notes.page(child.childId(), Language.ENGLISH).pdf(Paper.LETTER, false));
        assertThat(page).contains("Counted to fifty.").doesNotContain("sixty", "Draft");
        assertThat(notes.versions(child.childId(), Language.ENGLISH)).extracting(KeptNote::version)
                .containsExactly(2, 1);
        assertThat(notes.outOfDate(child.childId(), Language.SPANISH)).isTrue();
        assertThat(notes.outOfDate(child.childId(), Language.ENGLISH)).isFalse();
    }

    @Test
    void aSchoolWordOrAClassmatesNameWaitsUntilItIsMeant() {
        ChildRow child = children().get(5);
        ChildRow other = children().get(6);
        HomeNote note = notes.draft(child.childId(), Language.ENGLISH)
                .with(Part.CAN, List.of("Worked with " + other.givenName() + " at the smart table."));
        assertThat(notes.keep(child.childId(), note, 0, true, List.of())).extracting(WordGuard.Found::text)
                .containsExactly(other.givenName(), "smart");
        assertThat(notes.versions(child.childId(), Language.ENGLISH)).isEmpty();
        assertThat(notes.keep(child.childId(), note, 0, true, List.of(other.givenName(), "smart"))).isEmpty();
        assertThat(notes.newest(child.childId(), Language.ENGLISH).orElseThrow().confirmed())
                .containsExactly(other.givenName(), "smart");
    }

    @Test
    void twoAdultsDoNotOverwriteEachOther() {
        ChildRow child = children().get(8);
        HomeNote note = notes.draft(child.childId(), Language.SPANISH);
        notes.keep(child.childId(), note, 0, false, List.of());
        as("coteacher@sample");
        assertThatThrownBy(() -> notes.keep(child.childId(), note, 0, false, List.of()))
                .isInstanceOf(IllegalArgumentException.class).hasMessage("kept-meanwhile");
        assertThat(notes.keep(child.childId(), note, 1, false, List.of())).isEmpty();
    }

    @Test
    void theSpecialistReadsButDoesNotKeep() {
        as("specialist@sample");
        ChildRow child = roster.children().getFirst();
        HomeNote note = notes.draft(child.childId(), Language.ENGLISH);
        assertThat(notes.mayKeep(child.childId())).isFalse();
        assertThatThrownBy(() -> notes.keep(child.childId(), note, 0, false, List.of()))
                .isInstanceOf(NotVisible.class);
    }

    @Test
    void whatAnAdultTypesStaysText() {
        ChildRow child = children().get(10);
        HomeNote note = notes.draft(child.childId(), Language.ENGLISH)
                .with(Part.CAN, List.of("<script>alert(1)</script> & <b>\u0000\uD800 Nguyễn Łukasz"));
        assertThat(text(new HomePage("A", "", "B", LocalDate.of(2026, 3, 1), true, note, Set.of())
                .pdf(Paper.LETTER, true))).contains("<script>alert(1)</script> & <b>").contains("Nguyễn Łukasz");
    }
}
