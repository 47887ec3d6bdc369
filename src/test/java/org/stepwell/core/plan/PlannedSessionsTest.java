package org.stepwell.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.pacing.SchoolCalendar.Break;
import org.stepwell.core.plan.PlannedSessions.Outcome;
import org.stepwell.core.plan.PlannedSessions.Phase;
import org.stepwell.core.plan.PlannedSessions.Session;
import org.stepwell.core.tier.ChildState.Dose;

/** Worked by hand; common practice, no source. */
class PlannedSessionsTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);
    private static final SchoolCalendar PLAIN = new SchoolCalendar(List.of());

    @Test
    void fourAWeekForTwoWeeksAreEight() {
        List<Phase> plan = List.of(new Phase(MONDAY, 4));
        assertThat(PlannedSessions.planned(plan, null, PLAIN, MONDAY.plusDays(13))).isEqualTo(8);
        assertThat(PlannedSessions.planned(plan, null, PLAIN, MONDAY)).as("a part of a week is rounded down").isZero();
        assertThat(PlannedSessions.planned(plan, null, PLAIN, MONDAY.plusDays(1))).isEqualTo(1);
        assertThat(PlannedSessions.planned(plan, null, PLAIN, MONDAY.minusDays(1))).isZero();
    }

    @Test
    void aWeekWithoutSchoolPlansNothing() {
        SchoolCalendar off = new SchoolCalendar(List.of(new Break(MONDAY.plusDays(7), MONDAY.plusDays(11), "spring")));
        assertThat(PlannedSessions.planned(List.of(new Phase(MONDAY, 5)), null, off, MONDAY.plusDays(13))).isEqualTo(5);
    }

    @Test
    void aChangeOfPlanCountsFromItsDay() {
        List<Phase> fading = List.of(new Phase(MONDAY, 5), new Phase(MONDAY.plusDays(7), 2));
        assertThat(PlannedSessions.planned(fading, null, PLAIN, MONDAY.plusDays(13))).isEqualTo(7);
        assertThat(PlannedSessions.planned(fading, null, PLAIN, MONDAY.plusDays(4))).isEqualTo(5);
        assertThat(PlannedSessions.planned(fading, MONDAY.plusDays(8), PLAIN, MONDAY.plusDays(30))).isEqualTo(5);
    }

    @Test
    void missedSessionsAreTheSchoolsOrTheChilds() {
        Dose dose = PlannedSessions.dose(List.of(new Phase(MONDAY, 5)), null, List.of(
                new Session(MONDAY, Outcome.GIVEN), new Session(MONDAY.plusDays(1), Outcome.ADULT_UNAVAILABLE),
                new Session(MONDAY.plusDays(2), Outcome.SCHOOL_EVENT),
                new Session(MONDAY.plusDays(3), Outcome.CHILD_ABSENT), new Session(MONDAY.plusDays(9), Outcome.GIVEN)),
                PLAIN, MONDAY.plusDays(4));
        assertThat(dose).isEqualTo(new Dose(5, 1, 2, 1));
        assertThat(PlannedSessions.dose(List.of(new Phase(MONDAY, 5)), null, List.of(), PLAIN, MONDAY.minusDays(1)))
                .isNull();
    }

    @Test
    void twoMissedByTheSchoolRunningAreTold() {
        List<Session> sessions = new ArrayList<>(List.of(new Session(MONDAY.plusDays(1), Outcome.SCHOOL_EVENT),
                new Session(MONDAY, Outcome.GIVEN), new Session(MONDAY.plusDays(2), Outcome.ADULT_UNAVAILABLE)));
        assertThat(PlannedSessions.missedTwiceRunning(sessions)).isTrue();
        sessions.add(new Session(MONDAY.plusDays(3), Outcome.CHILD_ABSENT));
        assertThat(PlannedSessions.missedTwiceRunning(sessions)).isFalse();
        assertThat(PlannedSessions.missedTwiceRunning(List.of())).isFalse();
    }

    @Test
    void looksAgainAfterTwoAndFourWeeks() {
        assertThat(PlannedSessions.maintenance(MONDAY)).containsExactly(LocalDate.of(2026, 3, 16),
                LocalDate.of(2026, 3, 30));
    }

    /** Cutting a plan into phases of the same terms, and the order they are handed over in, change nothing. */
    @Test
    void plannedNeverShrinksWithTimeNorWithCuts() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(8);
        for (int round = 0; round < 300; round++) {
            int perWeek = 1 + random.nextInt(6);
            List<Phase> whole = List.of(new Phase(MONDAY, perWeek));
            List<Phase> cut = List.of(new Phase(MONDAY.plusDays(1 + random.nextInt(20)), perWeek),
                    new Phase(MONDAY, perWeek));
            int before = 0;
            for (int day = 0; day < 40; day++) {
                int planned = PlannedSessions.planned(whole, null, PLAIN, MONDAY.plusDays(day));
                assertThat(planned).as("round %d", round).isGreaterThanOrEqualTo(before)
                        .isEqualTo(PlannedSessions.planned(cut, null, PLAIN, MONDAY.plusDays(day)));
                before = planned;
            }
        }
    }
}
