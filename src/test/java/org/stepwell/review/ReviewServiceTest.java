package org.stepwell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestAdult;
import org.stepwell.TestDatabase;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;
import org.stepwell.core.wording.Language;
import org.stepwell.observation.ApiClient;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.privacy.FamilyRequest;
import org.stepwell.privacy.FamilyRequestService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.review.ReviewService.Refused;
import org.stepwell.review.ReviewService.Refused.Why;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Each test on a sample class of its own, since closing a review moves tiers. */
@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=review"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext(classMode = DirtiesContext.ClassMode.AFTER_CLASS)
class ReviewServiceTest {
    private static final String STATEMENT = "Nobody wrote down that he counts in twos.";

    @LocalServerPort
    private int port;
    @Autowired
    private ReviewService reviews;
    @Autowired
    private TierService tiers;
    @Autowired
    private ObservationService observations;
    @Autowired
    private FamilyRequestService requests;
    @Autowired
    private JsonMapper json;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    private UUID room = new UUID(0, 0);

    @BeforeEach
    void signsTheTeacherIn() {
        TestAdult.signIn(jdbc, transaction, "teacher@sample");
        room = reviews.mine().getFirst().classId();
    }

    @AfterEach
    void signsOut() {
        TestAdult.signOut();
    }

    private OpenReview open() {
        return reviews.open(room).orElseThrow();
    }

    private OneChild mover(OpenReview review) {
        return review.picture().children().stream().filter(c -> review.suggestion(c).verdict() == Verdict.MOVE)
                .findFirst().orElseThrow();
    }

    private Why refused(Runnable act) {
        try {
            act.run();
        } catch (Refused refused) {
            return refused.why();
        }
        throw new AssertionError("it was taken");
    }

    private void choose(OneChild child, int turn, Choice.Kind kind, Tier tier, LocalDate until, String reason) {
        reviews.choose(room, child.row().childId(), turn, kind, tier, until, reason);
    }

    /** The whole life of a review: interrupted, shared by two, closed, marked by late looks, never changed. */
    @Test
    void aReviewIsInterruptedSharedClosedAndMarkedButNeverChanged() throws IOException {
        OpenReview review = open();
        OneChild mover = mover(review);
        assertThat(review.order().quiet()).hasSize(3);

        choose(mover, 1, Choice.Kind.ACCEPT, null, null, "");
        assertThat(open().reviewId()).as("goes on where it was left").isEqualTo(review.reviewId());
        assertThat(open().choice(mover.row().childId()).orElseThrow().kind()).isEqualTo(Choice.Kind.ACCEPT);
        assertThat(tiers.decisions(mover.row().childId())).as("nothing is decided before it is closed")
                .noneMatch(d -> d.asOf().equals(review.picture().day()) && !d.choice().equals("start"));

        TestAdult.signIn(jdbc, transaction, "coteacher@sample");
        assertThat(open().choice(mover.row().childId()).orElseThrow().by()).isNotEqualTo("");
        assertThat(refused(() -> choose(mover, 1, Choice.Kind.KEEP, null, null, "")))
                .as("an adult who has not seen the first choice").isEqualTo(Why.CHOSEN_MEANWHILE);
        choose(mover, 2, Choice.Kind.KEEP, null, null, "");
        TestAdult.signIn(jdbc, transaction, "teacher@sample");
        choose(mover, 3, Choice.Kind.ACCEPT, null, null, "");

        OneChild quiet = open().children(open().order().quiet()).getFirst();
        choose(quiet, 1, Choice.Kind.OWN_CALL, Tier.EXTENSION, null, "");
        assertThat(open().choice(quiet.row().childId())).as("a call decides nothing").isEmpty();
        assertThat(open().ownCall(quiet.row().childId()).orElseThrow().tier()).isEqualTo(Tier.EXTENSION);
        assertThat(refused(() -> choose(quiet, 2, Choice.Kind.DEFER, null, review.picture().day(), "later")))
                .isEqualTo(Why.DAY_MISSING);
        assertThat(refused(() -> choose(quiet, 2, Choice.Kind.OTHER, Tier.SUPPORT, null, " ")))
                .isEqualTo(Why.REASON_MISSING);
        choose(quiet, 2, Choice.Kind.DEFER, null, review.picture().day().plusDays(3), "one fresh look first");

        assertThat(refused(() -> reviews.close(room, Map.of()))).isEqualTo(Why.CHILDREN_LEFT);
        reviews.keepAll(room, open().left().stream().map(c -> c.row().childId()).toList());
        assertThat(open().left()).isEmpty();
        SealedReview sealed = reviews.close(room, Map.of(mover.row().childId(), "Ms. Castellane tells the family"));

        assertThat(reviews.open(room)).as("one review a week").isEmpty();
        assertThat(sealed.intact()).isTrue();
        assertThat(sealed.children()).hasSize(review.picture().children().size());
        assertThat(sealed.changes()).singleElement().satisfies(line -> {
            assertThat(line.childId()).isEqualTo(mover.row().childId());
            assertThat(line.to()).isEqualTo(review.suggestion(mover).suggested());
            assertThat(line.teller()).isEqualTo("Ms. Castellane tells the family");
        });
        assertThat(tiers.decisions(mover.row().childId()).getLast().to())
                .isEqualTo(review.suggestion(mover).suggested());
        assertThat(tiers.decisions(quiet.row().childId())).as("put off is no decision")
                .noneMatch(d -> d.asOf().equals(review.picture().day()) && !d.choice().equals("start"));
        assertThat(refused(() -> choose(mover, 4, Choice.Kind.KEEP, null, null, ""))).isEqualTo(Why.CLOSED);

        assertThat(sealed.later()).isEmpty();
        observations.record(List.of(new Look(UUID.randomUUID(),
                review.picture().day().minusDays(1).atTime(LocalTime.NOON).atOffset(ZoneOffset.UTC),
                mover.row().schoolKey(), "T05", "16", 4, Help.NONE, Kind.TABLE, "x", Set.of(), null, null, false, null)),
                true);
        SealedReview marked = reviews.sealed(room).getFirst();
        assertThat(marked.later()).isEqualTo(Map.of(mover.row().childId(), 1));
        assertThat(marked.children()).isEqualTo(sealed.children());

        for (Language language : Language.values()) {
            byte[] pdf = new ReviewPaper(reviews.print(marked.reviewId()), language).pdf();
            try (PDDocument document = Loader.loadPDF(pdf)) {
                assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
                assertThat(new PDFTextStripper().getText(document)).contains(mover.row().label(),
                        "Ms. Castellane tells the family");
            }
        }
        besideTheWeekBefore(marked, mover, quiet);
        ApiClient teacher = new ApiClient(port);
        teacher.signIn("teacher@sample", "a-password-of-the-tests");
        ApiClient specialist = new ApiClient(port);
        specialist.signIn("specialist@sample", "a-password-of-the-tests");
        String path = "/api/reviews/" + marked.reviewId() + "/review.pdf";
        assertThat(teacher.get(path).statusCode()).isEqualTo(200);
        assertThat(specialist.get(path).statusCode()).isEqualTo(404);
        assertThat(teacher.get("/api/reviews/" + UUID.randomUUID() + "/review.pdf").statusCode()).isEqualTo(404);

        assertThatThrownBy(() -> DistrictScope.in(1, () -> transaction.execute(status -> jdbc.sql(
                "update review_seal set content = '{}'").update()))).isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> DistrictScope.in(1, () -> transaction.execute(status -> jdbc.sql(
                "delete from review_choice").update()))).isInstanceOf(DataAccessException.class);
    }

    /** The same review a week before, in which the mover had stayed, fewer looks were known, and one child was not there. */
    private void besideTheWeekBefore(SealedReview now, OneChild mover, OneChild quiet) throws IOException {
        assertThat(reviews.compared(room, now.reviewId())).as("the first has nothing to be compared with").isEmpty();
        SealedReview.Line moved = now.changes().getFirst();
        UUID newcomer = now.children().stream().map(SealedReview.Line::childId).filter(id -> !id.equals(moved.childId())
                && !id.equals(quiet.row().childId())).findFirst().orElseThrow();
        earlier(now, moved, newcomer);

        Comparison compared = reviews.compared(room, now.reviewId()).orElseThrow();
        assertThat(compared.before()).isEqualTo(now.week().minusWeeks(1));
        assertThat(compared.came()).containsExactly(newcomer);
        assertThat(compared.went()).isEmpty();
        assertThat(compared.children()).hasSize(now.children().size() - 1).filteredOn(Comparison.Pair::changed)
                .singleElement().satisfies(pair -> {
                    assertThat(pair.now()).isEqualTo(moved);
                    assertThat(pair.decidedOtherwise()).isTrue();
                    assertThat(pair.looks()).isPositive();
                });
        statement(mover.row().childId());
        String said = text(new ReviewPaper(reviews.print(now.reviewId()), Language.ENGLISH).pdf());
        assertThat(said).contains("Compared with the review of the week of", mover.row().label() + ": decided then: ",
                "looks were added: ", "Stayed, without a new look: ", "Only in this review: ", STATEMENT);
        assertThat(text(new ReviewPaper(reviews.print(now.reviewId()), Language.SPANISH).pdf()))
                .contains("En comparación con la revisión", "Siguen igual, sin observaciones nuevas: ", STATEMENT);
    }

    private void earlier(SealedReview now, SealedReview.Line moved, UUID newcomer) {
        DistrictScope.in(1, () -> transaction.execute(status -> {
            String content = jdbc.sql("select content from review_seal where review_id = :id")
                    .param("id", now.reviewId()).query(String.class).single();
            ObjectNode tree = (ObjectNode) json.readTree(content);
            ArrayNode kept = json.createArrayNode();
            tree.withArray("children").forEach(child -> {
                ObjectNode line = (ObjectNode) child;
                String id = line.path("child_id").stringValue("");
                if (id.equals(moved.childId().toString())) {
                    line.put("to", line.path("from").stringValue("")).put("verdict", "stay")
                            .put("suggested", line.path("from").stringValue(""));
                    line.putArray("look_ids");
                }
                if (!id.equals(newcomer.toString())) {
                    kept.add(line);
                }
            });
            tree.set("children", kept);
            String older = json.writeValueAsString(tree);
            UUID review = UUID.randomUUID();
            jdbc.sql("""
                    insert into review (district_id, review_id, class_id, unit_id, week, opened_by)
                    select district_id, :new, class_id, unit_id, week - 7, opened_by from review where review_id = :id""")
                    .param("new", review).param("id", now.reviewId()).update();
            return jdbc.sql("""
                    insert into review_seal (district_id, review_id, sealed_on, content, digest, sealed_by)
                    select district_id, :new, sealed_on - 7, :content, encode(sha256(convert_to(:content, 'UTF8')), 'hex'),
                        sealed_by from review_seal where review_id = :id""")
                    .param("new", review).param("content", older).param("id", now.reviewId()).update();
        }));
        assertThat(reviews.sealed(room)).hasSize(2).allMatch(SealedReview::intact);
    }

    /** 34 CFR 99.21 (b)(2) and (c): the statement after a refused amendment goes where the record goes. */
    private void statement(UUID child) {
        requests.ask(child, FamilyRequest.Kind.AMEND, LocalDate.now(ZoneOffset.UTC).minusDays(3), "He counts in twos.");
        TestAdult.signIn(jdbc, transaction, "lead@sample");
        UUID request = requests.requests(child).getFirst().requestId();
        int step = 0;
        for (FamilyRequest.Happened what : List.of(FamilyRequest.Happened.REFUSED, FamilyRequest.Happened.STATEMENT)) {
            requests.happened(child, request, step++, what, LocalDate.now(ZoneOffset.UTC).minusDays(2), STATEMENT);
        }
        TestAdult.signIn(jdbc, transaction, "teacher@sample");
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFRenderer renderer = new PDFRenderer(document);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                ImageIO.write(renderer.renderImageWithDPI(page, 80), "png",
                        Path.of("target", "review-" + (page + 1) + ".png").toFile());
            }
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void whoHasNoPartInTheClassOpensNoReview() {
        TestAdult.signIn(jdbc, transaction, "specialist@sample");
        assertThat(reviews.mine()).isEmpty();
        assertThatThrownBy(() -> reviews.open(room)).isInstanceOf(NotVisible.class);
    }
}
