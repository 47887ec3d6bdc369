package org.stepwell.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.caseload.CaseloadService;
import org.stepwell.core.wording.Language;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What a parent may inspect: 34 CFR 99.10 (all of it) and 99.12 (a) (nothing of other children). */
@SpringBootTest(classes = Application.class,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=records"})
class RecordsTest extends OnTheSample {
    /** Tables that name a child, list children or hold a digest of one, and those that refer to such a table. */
    private static final String WITH_A_CHILD = """
            with recursive refers(of, target) as (
              select conrelid, confrelid from pg_constraint where contype = 'f'
            ), found(of) as (
              select attrelid from pg_attribute a join pg_class c on c.oid = a.attrelid
              where c.relkind in ('r', 'p') and attname in ('child_id', 'children', 'child_digest')
              union select r.of from refers r join found f on r.target = f.of
            )
            select distinct relname from pg_class where oid in (select of from found)""";

    @Autowired
    private RecordsService records;
    @Autowired
    private AccessRecordService record;
    @Autowired
    private CaseloadService caseload;
    private ChildRow child;

    @BeforeEach
    void takesAChild() {
        child = roster.byKey("q0602").orElseThrow();
    }

    private Map<String, byte[]> files(Language language) throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(
                records.bundle(child.schoolKey(), RecordsService.Purpose.INSPECT, language)))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), in.readAllBytes());
            }
        }
        return files;
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static String pdf(byte[] bytes) throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private static Set<String> claims() {
        return Stream.concat(Arrays.stream(RecordKind.values()).map(RecordKind::table),
                RecordKind.LEFT_OUT.keySet().stream()).collect(Collectors.toSet());
    }

    private Set<String> unclaimed(Set<String> claims) {
        Set<String> tables = new TreeSet<>(jdbc.sql(WITH_A_CHILD).query(String.class).list());
        assertThat(tables).contains("child", "observation", "plan_session", "waiting_verdict", "lesson_choice",
                "access_entry");
        tables.removeAll(claims);
        return tables;
    }

    @Test
    void eachTableWithAChildIsInTheBundleOrLeftOutForAReason() {
        assertThat(transaction.<Set<String>>execute(status -> unclaimed(claims()))).isEmpty();
    }

    /** One that names the child, one that names what names it, a list of children, a digest of one. */
    @Test
    void aTableThatIsClaimedNoMoreIsFound() {
        for (String table : List.of("concern", "plan_end", "lesson_choice", "access_entry")) {
            Set<String> claims = claims();
            assertThat(claims.remove(table)).isTrue();
            assertThat(transaction.<Set<String>>execute(status -> unclaimed(claims))).containsExactly(table);
        }
    }

    /** Counted by another way than the bundle's own: each look, decision, enrolment and place the store has. */
    @Test
    void everyRowIsInTheJsonAndInTheCsv() throws IOException {
        Map<String, byte[]> files = files(Language.ENGLISH);
        JsonNode json = JsonMapper.builder().build().readTree(files.get("records.json"));
        Map<String, String> tables = Map.of("looks", "observation", "decisions", "tier_decision", "enrolments",
                "enrolment", "sharings", "caseload_grant", "groups", "seating_place", "check_marks", "check_mark");
        tables.forEach((kind, table) -> {
            int kept = transaction.execute(status -> jdbc.sql("select count(*) from " + table
                    + " where child_id = :child").param("child", child.childId()).query(Integer.class).single());
            assertThat(json.get(kind).size()).as(kind).isEqualTo(kept);
            if (kept > 0) {
                assertThat(text(files.get("csv/" + kind + ".csv")).lines().count()).as(kind).isGreaterThan(kept);
            }
        });
        assertThat(json.get("looks").size()).isGreaterThan(5);
        assertThat(json.get("child").get(0).get("given_name").asString()).isEqualTo(child.givenName());
        assertThat(json.get("looks").get(0).get("recorded_by").asString()).doesNotMatch("[0-9a-f-]{36}");
    }

    @Test
    void thePdfListsAllKindsAndReadsInBothLanguages() throws IOException {
        assertThat(pdf(files(Language.ENGLISH).get("index.pdf"))).contains("Records on " + child.givenName(),
                "Wishes for groups", "Who asked for what", "csv/looks.csv", "34 CFR 99.10", "class: Room 6", "observed on: ")
                .containsPattern("observed at: \\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d ·").doesNotContain("class id", "withdrawn");
        assertThat(pdf(files(Language.SPANISH).get("index.pdf"))).contains("Registros de " + child.givenName(),
                "Deseos para los grupos", "Quién pidió qué");
    }

    @Test
    void noOtherChildIsInIt() throws IOException {
        List<ChildRow> others = roster.children(child.classId()).stream()
                .filter(c -> !c.childId().equals(child.childId())).toList();
        UUID adult = as("teacher@sample").adultId();
        transaction.executeWithoutResult(status -> Stream.of(child.childId(), others.getFirst().childId()).forEach(
                one -> jdbc.sql("""
                        insert into grouping_wish (district_id, class_id, kind, child_id, other_child_id, recorded_by)
                        select district_id, :class, 'apart', child_id, :other, :adult from child where child_id = :one""")
                        .param("class", child.classId()).param("adult", adult).param("one", one)
                        .param("other", one.equals(child.childId()) ? others.getLast().childId() : child.childId())
                        .update()));
        Map<String, byte[]> files = files(Language.ENGLISH);
        assertThat(text(files.get("csv/wishes.csv")).lines().filter(line -> line.contains("apart")).count())
                .isGreaterThanOrEqualTo(2);
        String all = files.entrySet().stream().filter(e -> !e.getKey().endsWith(".pdf")).map(e -> text(e.getValue()))
                .collect(Collectors.joining());
        for (ChildRow other : others) {
            assertThat(all).as(other.label()).doesNotContain(other.childId().toString(), other.schoolKey());
            assertThat(all).as(other.label()).doesNotContainPattern("\\b" + other.givenName() + "\\b");
        }
    }

    @Test
    void whatAdultsTypedStaysText() throws IOException {
        caseload.comment(child.childId(), UUID.randomUUID(), "=HYPERLINK(\"x\") <script>alert(1)</script>");
        Map<String, byte[]> files = files(Language.ENGLISH);
        assertThat(text(files.get("csv/comments.csv"))).contains("\"'=HYPERLINK(");
        assertThat(pdf(files.get("index.pdf"))).contains("<script>alert(1)</script>");
    }

    @Test
    void itsMakingIsADisclosureToTheFamilyAndItsOwnLastLine() throws IOException {
        String access = text(files(Language.ENGLISH).get("csv/access.csv"));
        assertThat(access.lines().toList().getLast()).contains(",all_records,given,family,teacher,");
        assertThat(record.lines(child.childId(), 1).getFirst().what()).isEqualTo("all_records");
    }

    @Test
    void aSpecialistHasPartsOfAChildAndNotTheBundle() {
        as("specialist@sample");
        assertThat(roster.byKey("q0602")).isPresent();
        assertThat(records.mayBundle(child.childId())).isFalse();
        assertThatThrownBy(() -> records.bundle("q0602", RecordsService.Purpose.INSPECT, Language.ENGLISH)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> records.bundle("no-such-child", RecordsService.Purpose.INSPECT, Language.ENGLISH)).isInstanceOf(NotVisible.class);
    }
}
