package org.stepwell.trend;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.trend.GoalRule;
import org.stepwell.core.trend.GoalRule.Call;
import org.stepwell.core.trend.Trend;
import org.stepwell.core.trend.TrendGoal;
import org.stepwell.core.wording.Language;

class TrendWordingTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 2, 2);
    private static final SchoolCalendar CALENDAR = new SchoolCalendar(List.of());
    private final TrendWording english = new TrendWording(Language.ENGLISH);
    private final TrendWording spanish = new TrendWording(Language.SPANISH);

    private static Trend of(int[] steps, TrendGoal... goals) {
        return Trend.ofSkill("T05", IntStream.range(0, steps.length)
                .mapToObj(i -> new DayStep(MONDAY.plusWeeks(i), "T05", steps[i], false, List.of())).toList(), CALENDAR,
                MONDAY.plusWeeks(steps.length - 1), List.of(goals));
    }

    @Test
    void givesNoGrowthBelowThreeWeeks() {
        assertThat(english.growth(of(new int[] {1, 3}))).containsExactly(
                "Below three weeks nothing can be said about growth.");
        assertThat(english.finding("T05", of(new int[] {1, 3}))).endsWith("Too few weeks for a line.");
    }

    /** By hand: slope 5/10, squares of the residuals 0.3, so 0.5 plus and minus 3.182 (table of t, 3 degrees) x 0.1. */
    @Test
    void givesNoSingleNumberBelowEightWeeks() {
        List<String> said = english.growth(of(new int[] {1, 2, 2, 3, 3}));
        assertThat(said.getFirst()).isEqualTo("Too few weeks for one number. Anything from 0.18 to 0.82 steps a week "
                + "fits the points (least squares, 95 % interval).");
        assertThat(said.getLast()).startsWith("Weeks of one child lean on one another");
        assertThat(spanish.growth(of(new int[] {1, 2, 2, 3, 3})).getFirst())
                .startsWith("Muy pocas semanas para un solo número. Cualquier valor de 0.18 a 0.82 pasos por semana");
    }

    @Test
    void doesNotTakeWeeksOnOneLineForCertainty() {
        for (int[] steps : new int[][] {{2, 2, 2}, {1, 2, 3}, {2, 2, 2, 2, 2, 2, 2, 2}}) {
            assertThat(english.growth(of(steps))).singleElement().asString().contains("no interval is given");
            assertThat(english.finding("T05", of(steps))).doesNotContain("fan");
        }
    }

    /** By hand: slope 20/42, squares of the residuals 0.4762, plus and minus 2.447 (table of t, 6 degrees) x 0.0435. */
    @Test
    void givesGrowthWithItsIntervalFromEightWeeksOn() {
        List<String> said = english.growth(of(new int[] {1, 1, 2, 2, 3, 3, 4, 4}));
        assertThat(said.getFirst())
                .isEqualTo("0.48 steps a week by least squares (95 % interval 0.37 to 0.58).");
        assertThat(said.get(1)).startsWith("By the median of all slopes (Theil-Sen), which one odd week cannot bend: "
                + "0.50 steps a week (");
    }

    @ParameterizedTest
    @EnumSource
    void everyRuleIsShownWithWhatIsKnownAgainstItInBothLanguages(GoalRule rule) {
        for (TrendWording words : List.of(english, spanish)) {
            assertThat(words.rule(rule)).contains(". ");
            assertThat(words.weaknesses(rule)).hasSameSizeAs(rule.weaknesses()).allMatch(w -> w.endsWith("."));
        }
        assertThat(english.rule(rule)).isNotEqualTo(spanish.rule(rule));
    }

    @ParameterizedTest
    @EnumSource
    void everyCallHasWordsInBothLanguages(Call call) {
        assertThat(english.call(call)).isNotBlank().isNotEqualTo(spanish.call(call));
    }

    @Test
    void judgesOnlyTheWeeksSinceTheGoalWasSet() {
        TrendGoal late = new TrendGoal("T05", MONDAY.plusWeeks(5), 3, MONDAY.plusWeeks(12), 5);
        TrendGoal early = new TrendGoal("T05", MONDAY, 3, MONDAY.plusWeeks(12), 5);
        int[] steps = {1, 1, 1, 1, 1, 1, 1, 1};
        assertThat(of(steps, early).ruled()).extracting(Trend.Ruled::call)
                .containsExactly(Call.BELOW, Call.BELOW, Call.BELOW);
        assertThat(of(steps, late).ruled().getFirst().call()).isEqualTo(Call.TOO_FEW);
        assertThat(of(steps).ruled()).isEmpty();
    }
}
