package org.stepwell.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestAdult;
import org.stepwell.TestDatabase;
import org.stepwell.core.plan.PlannedSessions.Outcome;
import org.stepwell.core.tier.ChildState.Dose;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.TierService;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class PlanServiceTest {
    @Autowired
    private PlanService plans;
    @Autowired
    private RosterService roster;
    @Autowired
    private TierService tiers;
    @Autowired
    private CurrentAdult current;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    private LocalDate today = LocalDate.EPOCH;

    @BeforeEach
    void signsTheTeacherIn() {
        TestAdult.signIn(jdbc, transaction, "teacher@sample");
        today = current.today();
    }

    @AfterEach
    void signsOut() {
        TestAdult.signOut();
    }

    private ChildRow child(int at) {
        return roster.children(roster.classes().getFirst().classId()).get(at);
    }

    private PlanTerms terms(LocalDate from, int perWeek) {
        return new PlanTerms(from, "T05", 2, 4, 80, from.plusWeeks(8), "Ms. Okoro", perWeek, 20, from.plusWeeks(4),
                "ten frames");
    }

    private List<String> refused(Runnable act) {
        try {
            act.run();
        } catch (PlanService.Refused refused) {
            return refused.fields();
        }
        throw new AssertionError("it was taken");
    }

    @Test
    void sessionsBecomeTheDoseThatTheRulesRead() {
        UUID child = child(0).childId();
        UUID plan = plans.start(child, true, terms(today.minusWeeks(2), 5));
        UUID first = UUID.randomUUID();
        for (int again = 0; again < 3; again++) {
            plans.log(child, plan, first, today.minusDays(7), Outcome.GIVEN, 20, "bundles");
        }
        plans.log(child, plan, UUID.randomUUID(), today.minusDays(6), Outcome.ADULT_UNAVAILABLE, 20, "");
        plans.log(child, plan, UUID.randomUUID(), today.minusDays(5), Outcome.SCHOOL_EVENT, 0, "");
        UUID wrong = UUID.randomUUID();
        plans.log(child, plan, wrong, today.minusDays(4), Outcome.CHILD_ABSENT, 0, "");
        plans.takeBack(child, plan, wrong);

        Plan kept = plans.running(child).orElseThrow();
        assertThat(kept.sessions()).extracting(Plan.Held::outcome).containsExactly(Outcome.GIVEN,
                Outcome.ADULT_UNAVAILABLE, Outcome.SCHOOL_EVENT);
        assertThat(kept.sessions()).extracting(Plan.Held::minutes).containsExactly(20, 0, 0);
        assertThat(kept.missedTwiceRunning()).isTrue();
        Dose dose = tiers.picture(roster.classes().getFirst().classId()).children().stream()
                .filter(c -> c.row().childId().equals(child)).findFirst().orElseThrow().state().dose();
        assertThat(dose).isNotNull();
        assertThat(dose.given()).isEqualTo(1);
        assertThat(dose.missedBySchool()).isEqualTo(2);
        assertThat(dose.missedByChild()).isZero();
    }

    @Test
    void aChangeIsAPhaseAndAnEndIsTheEnd() {
        UUID child = child(1).childId();
        UUID plan = plans.start(child, true, terms(today.minusWeeks(4), 4));
        assertThat(refused(() -> plans.start(child, true, terms(today, 4)))).containsExactly("running");
        plans.change(child, plan, terms(today.minusWeeks(1), 2));
        assertThat(refused(() -> plans.change(child, plan, terms(today.minusWeeks(2), 2)))).containsExactly("day");
        Plan changed = plans.running(child).orElseThrow();
        assertThat(changed.on(today.minusWeeks(2)).perWeek()).isEqualTo(4);
        assertThat(changed.on(today).perWeek()).isEqualTo(2);
        assertThat(refused(() -> plans.end(child, plan, today.plusDays(1), "faded", ""))).containsExactly("day");
        plans.end(child, plan, today, "faded", "two looks without help");
        assertThat(refused(() -> plans.log(child, plan, UUID.randomUUID(), today, Outcome.GIVEN, 20, "")))
                .containsExactly("ended");
        assertThat(refused(() -> plans.end(child, plan, today, "faded", ""))).containsExactly("ended");
        assertThat(plans.plans(child)).singleElement().satisfies(p -> assertThat(p.outcome()).isEqualTo("faded"));
    }

    @Test
    void wrongTermsAreNamedAndNothingIsStored() {
        UUID child = child(2).childId();
        assertThat(refused(() -> plans.start(child, true, new PlanTerms(today, " ", 0, 6, 101, today, "", 11, 4, today,
                "x".repeat(2001))))).containsExactly("skill", "start", "step", "share", "by", "given-by", "per-week",
                "minutes", "review", "activity");
        assertThat(plans.plans(child)).isEmpty();
    }

    @Test
    void theSpecialistLogsSessionsOfASharedChildButWritesNoPlan() {
        TestAdult.signIn(jdbc, transaction, "specialist@sample");
        UUID shared = roster.children().getLast().childId();
        TestAdult.signIn(jdbc, transaction, "teacher@sample");
        UUID hidden = child(0).childId();
        UUID plan = plans.start(shared, true, terms(today.minusWeeks(1), 3));
        TestAdult.signIn(jdbc, transaction, "specialist@sample");
        plans.log(shared, plan, UUID.randomUUID(), today, Outcome.GIVEN, 25, "");
        assertThat(plans.running(shared).orElseThrow().sessions()).hasSize(1);
        assertThat(plans.mayWrite(shared)).isFalse();
        assertThatThrownBy(() -> plans.end(shared, plan, today, "faded", "")).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> plans.plans(hidden)).isInstanceOf(NotVisible.class);
    }

    @Test
    void whatWasWrittenIsNotChanged() {
        assertThatThrownBy(() -> DistrictScope.in(1, () -> transaction.execute(status -> jdbc.sql(
                "update plan_session set outcome = 'given'").update()))).isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> DistrictScope.in(1, () -> transaction.execute(status -> jdbc.sql(
                "delete from plan_phase").update()))).isInstanceOf(DataAccessException.class);
    }
}
