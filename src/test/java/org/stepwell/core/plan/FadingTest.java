package org.stepwell.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;

/**
 * Two separate days and two and four weeks are common practice, no numeric standard is published (probes two to four weeks
 * on: Longino et al. 2021; Fuller and Fienup 2018); the counts are worked by hand.
 */
class FadingTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);

    private static CountedLook look(LocalDate day, int step, Help help) {
        return new CountedLook(new Look(UUID.randomUUID(), day.atTime(LocalTime.NOON).atOffset(ZoneOffset.UTC), "c1", "T05",
                "17", step, help, Kind.TABLE, "teacher", Set.of(), null, null, false, null), "T05", step,
                help == Help.CUBES && step >= 3);
    }

    @Test
    void theGoalIsShownOnTwoDaysAndInItsShareOfLooksWithoutHelp() {
        List<CountedLook> looks = new ArrayList<>(List.of(look(MONDAY.minusDays(3), 5, Help.NONE),
                look(MONDAY, 4, Help.NONE), look(MONDAY, 4, Help.NONE), look(MONDAY.plusDays(1), 5, Help.CUBES),
                look(MONDAY.plusDays(1), 4, Help.PROMPT), look(MONDAY.plusDays(2), 4, Help.MODELLED)));
        assertThat(Fading.of(looks, MONDAY, 4)).as("one day, however often").isEqualTo(new Fading(2, 2, 1));
        assertThat(Fading.of(looks, MONDAY, 4).reached(80)).isFalse();
        looks.add(look(MONDAY.plusDays(3), 5, Help.NONE));
        assertThat(Fading.of(looks, MONDAY, 4).reached(80)).as("3 of 3 on two days").isTrue();
        looks.add(look(MONDAY.plusDays(4), 3, Help.NONE));
        assertThat(Fading.of(looks, MONDAY, 4).reached(80)).as("3 of 4 are 75 in 100").isFalse();
        assertThat(Fading.of(looks, MONDAY, 4).reached(75)).isTrue();
    }

    @Test
    void sessionsHalveStepByStepAndThenThePlanEnds() {
        List<Integer> steps = new ArrayList<>();
        for (int perWeek = 5; perWeek > 0; perWeek = Fading.fewer(perWeek)) {
            steps.add(perWeek);
        }
        assertThat(steps).containsExactly(5, 3, 2, 1);
    }

    @Test
    void eachLookAgainIsOwedUntilOneWithoutHelpIsMade() {
        List<CountedLook> looks = new ArrayList<>(List.of(look(MONDAY.plusDays(1), 4, Help.NONE),
                look(MONDAY.plusDays(15), 5, Help.CUBES)));
        assertThat(LookAgain.after(MONDAY, 4, looks)).extracting(LookAgain::due)
                .containsExactly(LocalDate.of(2026, 3, 16), LocalDate.of(2026, 3, 30));
        assertThat(LookAgain.after(MONDAY, 4, looks)).allMatch(again -> again.made() == null);
        assertThat(LookAgain.after(MONDAY, 4, looks).getFirst().owed(MONDAY.plusDays(13))).isFalse();
        assertThat(LookAgain.after(MONDAY, 4, looks)).extracting(again -> again.owed(MONDAY.plusDays(14)))
                .containsExactly(true, false);

        looks.add(look(MONDAY.plusDays(11), 4, Help.NONE));
        assertThat(LookAgain.after(MONDAY, 4, looks).getFirst()).as("three days early serves")
                .isEqualTo(new LookAgain(MONDAY.plusDays(14), MONDAY.plusDays(11), 4, true));
        looks.add(look(MONDAY.plusDays(40), 3, Help.NONE));
        assertThat(LookAgain.after(MONDAY, 4, looks).getLast())
                .isEqualTo(new LookAgain(MONDAY.plusDays(28), MONDAY.plusDays(40), 3, false));
        assertThat(LookAgain.after(MONDAY, 4, looks)).noneMatch(again -> again.owed(MONDAY.plusDays(60)));
    }
}
