package org.stepwell.caseload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.conference.HomeNoteService;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.wording.Language;
import org.stepwell.observation.ObservationService;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.privacy.NotVisible;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=caseload"})
class CaseloadServiceTest extends OnTheSample {
    @Autowired
    private ShareService shares;
    @Autowired
    private CaseloadService caseload;
    @Autowired
    private PlanService plans;
    @Autowired
    private HomeNoteService notes;
    @Autowired
    private ObservationService observations;
    private UUID specialist;

    @BeforeEach
    void knowsTheSpecialist() {
        specialist = as("specialist@sample").adultId();
        as("teacher@sample");
    }

    private void share(boolean plan, boolean note, String... names) {
        shares.share(room, Set.copyOf(List.of(names).stream().map(n -> child(n).childId()).toList()), specialist, plan,
                note, "extra help", today.plusWeeks(4));
    }

    @Test
    void sharingOpensAChildAndEndingClosesItAtOnce() {
        UUID freya = child("Freya").childId();
        as("specialist@sample");
        assertThatThrownBy(() -> observations.looks(freya)).isInstanceOf(NotVisible.class);
        as("teacher@sample");
        share(true, true, "Freya");
        Sharing sharing = shares.sharings(room).stream().filter(s -> s.childId().equals(freya)).findFirst().orElseThrow();
        assertThat(sharing.by()).isEqualTo("Imogen Castellane");
        assertThat(sharing.reason()).isEqualTo("extra help");
        as("specialist@sample");
        assertThat(observations.looks(freya)).isNotEmpty();
        assertThat(caseload.mine("en")).extracting(c -> c.child().label()).contains("Freya", "Amadou")
                .doesNotContain("Devika");
        as("teacher@sample");
        shares.end(room, sharing.grantId());
        as("specialist@sample");
        assertThatThrownBy(() -> observations.looks(freya)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> caseload.comments(freya)).isInstanceOf(NotVisible.class);
        assertThat(caseload.mine("en")).extracting(c -> c.child().label()).doesNotContain("Freya");
        as("teacher@sample");
        shares.end(room, sharing.grantId());
        assertThat(shares.sharings(room)).as("ended once").noneMatch(s -> s.childId().equals(freya));
    }

    /** Looks are the floor; plans and notes home are shared or not. The class's own adults see them always. */
    @Test
    void whatWasNotSharedStaysClosed() {
        UUID mei = child("Mei").childId();
        plans.start(mei, true, new PlanTerms(today, "T05", 2, 4, 80, today.plusWeeks(8), "Ms. Dunmore", 3, 20,
                today.plusWeeks(4), "ten frames"));
        share(false, false, "Mei");
        as("specialist@sample");
        assertThat(observations.looks(mei)).isNotEmpty();
        assertThat(plans.mayRead(mei)).isFalse();
        assertThatThrownBy(() -> plans.plans(mei)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> notes.versions(mei, Language.ENGLISH)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> notes.draft(mei, Language.ENGLISH)).isInstanceOf(NotVisible.class);
        assertThat(caseload.mine("en")).filteredOn(c -> c.child().childId().equals(mei)).singleElement()
                .satisfies(card -> {
                    assertThat(card.plan()).isNull();
                    assertThat(card.looks()).isNotEmpty();
                    assertThat(card.focus()).isNotNull();
                    assertThat(card.phrases()).isNotEmpty();
                });
        as("teacher@sample");
        share(true, false, "Mei");
        assertThat(shares.sharings(room)).filteredOn(s -> s.childId().equals(mei)).as("the new in place of the old")
                .hasSize(1);
        as("specialist@sample");
        assertThat(plans.running(mei)).isPresent();
        assertThat(caseload.mine("en")).filteredOn(c -> c.child().childId().equals(mei)).singleElement()
                .satisfies(card -> assertThat(card.plan()).isNotNull());
        assertThatThrownBy(() -> notes.draft(mei, Language.ENGLISH)).isInstanceOf(NotVisible.class);
    }

    @Test
    void refusesWhatCannotBeShared() {
        UUID ruby = child("Ruby").childId();
        assertThatThrownBy(() -> shares.share(room, Set.of(), specialist, true, true, "why", today))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> shares.share(room, Set.of(ruby), specialist, true, true, " ", today))
                .isInstanceOf(Refused.class).hasMessageContaining("why");
        for (LocalDate wrong : List.of(today.minusDays(1), today.plusDays(ShareService.LONGEST + 1))) {
            assertThatThrownBy(() -> shares.share(room, Set.of(ruby), specialist, true, true, "why", wrong))
                    .isInstanceOf(Refused.class);
        }
        UUID coTeacher = as("coteacher@sample").adultId();
        assertThatThrownBy(() -> shares.share(room, Set.of(ruby), coTeacher, true, true, "why", today))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> shares.share(room, Set.of(UUID.randomUUID()), specialist, true, true, "why", today))
                .isInstanceOf(NotVisible.class);
        as("specialist@sample");
        assertThatThrownBy(() -> shares.share(room, Set.of(ruby), specialist, true, true, "why", today))
                .as("nobody shares with themselves").isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> shares.sharings(room)).isInstanceOf(NotVisible.class);
    }

    @Test
    void theThreadIsReadByWhoeverSeesTheChildAndTheSameWordsStandThereOnce() {
        UUID amadou = child("Amadou").childId();
        UUID id = UUID.randomUUID();
        caseload.comment(amadou, id, " Began at ten twice today. ");
        caseload.comment(amadou, id, "Began at ten twice today.");
        as("specialist@sample");
        caseload.comment(amadou, UUID.randomUUID(), "<script>alert(1)</script>");
        as("teacher@sample");
        assertThat(caseload.comments(amadou)).extracting(Comment::words)
                .containsExactly("Began at ten twice today.", "<script>alert(1)</script>");
        assertThat(caseload.comments(amadou)).extracting(Comment::by).containsExactly("Imogen Castellane",
                "Nkechi Dunmore");
        assertThatThrownBy(() -> caseload.comment(amadou, UUID.randomUUID(), "x".repeat(2001)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> transaction.executeWithoutResult(s ->
                jdbc.sql("update caseload_comment set words = 'other'").update())).isInstanceOf(RuntimeException.class);
    }

    @Test
    void handsACaseloadOver() {
        UUID other = inTransaction(() -> jdbc.sql("""
                insert into adult (district_id, adult_id, school_id, sign_in, name)
                select district_id, gen_random_uuid(), school_id, 'second@sample', 'Odile Marchetti' from adult
                where sign_in = 'specialist@sample' returning adult_id""").query(UUID.class).single());
        share(true, false, "Jonah");
        assertThat(shares.others(room)).extracting(Map.Entry::getValue).contains("Odile Marchetti", "Nkechi Dunmore")
                .doesNotContain("Imogen Castellane", "Anselm Varga");
        List<UUID> before = shares.sharings(room).stream().filter(s -> s.adultId().equals(specialist))
                .map(Sharing::childId).sorted().toList();
        shares.handOver(room, specialist, other);
        assertThat(shares.sharings(room)).extracting(Sharing::adultId).containsOnly(other);
        assertThat(shares.sharings(room).stream().map(Sharing::childId).sorted().toList())
                .isEqualTo(before.stream().distinct().toList());
        assertThatThrownBy(() -> shares.handOver(room, specialist, other)).isInstanceOf(Refused.class);
        as("specialist@sample");
        assertThat(caseload.mine("en")).isEmpty();
        as("teacher@sample");
        shares.handOver(room, other, specialist);
    }

    private <T> T inTransaction(java.util.function.Supplier<T> work) {
        return transaction.execute(status -> work.get());
    }
}
