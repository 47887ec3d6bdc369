package org.stepwell.core.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.stepwell.core.trend.GoalRule.FOUR_POINT;
import static org.stepwell.core.trend.GoalRule.INTERVAL;
import static org.stepwell.core.trend.GoalRule.TREND_LINE;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.stepwell.core.trend.GoalRule.Call;

class GoalRuleTest {
    private static final double[] WEEKS = {1, 2, 3, 4, 5, 6, 7, 8};
    /** A made-up class by week; its 95 % interval of the slope by R 4 lm and confint is 0.5188 to 0.9812. */
    private static final double[] CLASS = {3, 4, 4, 6, 5, 7, 8, 8};

    /** By hand: the median of weeks 1 to 3 is 4 at week 2, and 6 steps are left for 10 weeks. */
    @Test
    void drawsTheGoalFromTheMedianOfTheFirstThree() {
        GoalLine goal = GoalLine.fromBaseline(WEEKS, CLASS, 12, 10);
        assertThat(goal.slope()).isCloseTo(0.6, within(1e-12));
        assertThat(goal.at(8)).isCloseTo(7.6, within(1e-12));
        assertThatThrownBy(() -> GoalLine.fromBaseline(WEEKS, CLASS, 2, 10)).hasMessageContaining("not after");
        assertThatThrownBy(() -> GoalLine.fromBaseline(new double[] {1, 2}, new double[] {3, 3}, 9, 5))
                .hasMessageContaining("three points");
    }

    @ParameterizedTest
    @CsvSource({"0.5, ABOVE", "0.52, CANNOT_TELL", "0.75, CANNOT_TELL", "0.98, CANNOT_TELL", "1.0, BELOW"})
    void callsByTheIntervalOnlyOutsideIt(double needed, Call call) {
        assertThat(INTERVAL.judge(WEEKS, CLASS, new GoalLine(0, 0, 1, needed))).isEqualTo(call);
    }

    @ParameterizedTest
    @CsvSource({"0.74, ABOVE", "0.75, NEAR", "0.76, BELOW"})
    void setsTheTrendAgainstTheGoalWithoutTolerance(double needed, Call call) {
        assertThat(TREND_LINE.judge(WEEKS, CLASS, new GoalLine(0, 0, 1, needed))).isEqualTo(call);
    }

    @Test
    void callsByTheFourLatestPointsInWhateverOrderTheyCome() {
        GoalLine flat = new GoalLine(0, 4.5, 1, 4.5);
        assertThat(FOUR_POINT.judge(WEEKS, CLASS, flat)).isEqualTo(Call.ABOVE);
        double[] turned = {8, 7, 6, 5, 4, 3, 2, 1};
        assertThat(FOUR_POINT.judge(turned, CLASS, flat)).isEqualTo(Call.NEAR);
        assertThat(FOUR_POINT.judge(WEEKS, CLASS, new GoalLine(0, 9, 1, 9))).isEqualTo(Call.BELOW);
        assertThat(FOUR_POINT.judge(WEEKS, CLASS, new GoalLine(0, 5, 1, 5))).isEqualTo(Call.NEAR);
    }

    @Test
    void saysNothingFromTooFewPointsOrWeeks() {
        GoalLine goal = new GoalLine(0, 9, 1, 9);
        assertThat(FOUR_POINT.judge(first(WEEKS, 5), first(CLASS, 5), goal)).isEqualTo(Call.TOO_FEW);
        assertThat(FOUR_POINT.judge(first(WEEKS, 6), first(CLASS, 6), goal)).isEqualTo(Call.BELOW);
        assertThat(TREND_LINE.judge(first(WEEKS, 7), first(CLASS, 7), goal)).isEqualTo(Call.TOO_FEW);
        assertThat(INTERVAL.judge(first(WEEKS, 2), first(CLASS, 2), goal)).isEqualTo(Call.TOO_FEW);
        double[] daily = IntStream.range(0, 8).mapToDouble(i -> i / 7.0).toArray();
        assertThat(FOUR_POINT.judge(daily, CLASS, goal)).isEqualTo(Call.TOO_FEW);
        assertThat(TREND_LINE.judge(daily, CLASS, goal)).isEqualTo(Call.TOO_FEW);
    }

    /** Exact: a child on the goal whose eight points fall on either side by a fair coin. */
    @Test
    void callsAChildOnTheGoalBelowAsOftenAsItsWeaknessesSay() {
        int[] below = new int[2];
        int[] above = new int[2];
        for (int signs = 0; signs < 256; signs++) {
            int pattern = signs;
            double[] y = IntStream.range(0, 8).mapToDouble(i -> (pattern >> i & 1) == 1 ? 1 : -1).toArray();
            for (GoalRule rule : new GoalRule[] {FOUR_POINT, TREND_LINE}) {
                Call call = rule.judge(WEEKS, y, new GoalLine(0, 0, 1, 0));
                below[rule.ordinal()] += call == Call.BELOW ? 1 : 0;
                above[rule.ordinal()] += call == Call.ABOVE ? 1 : 0;
            }
        }
        assertThat(below[FOUR_POINT.ordinal()] / 256.0).isEqualTo(0.0625);
        assertThat(below[TREND_LINE.ordinal()]).isEqualTo(above[TREND_LINE.ordinal()]);
        assertThat(below[TREND_LINE.ordinal()] / 256.0).isBetween(0.45, 0.5);
    }

    @ParameterizedTest
    @EnumSource(GoalRule.class)
    void isNeverShownWithoutAWeakness(GoalRule rule) {
        assertThat(rule.weaknesses()).isNotEmpty().extracting(GoalRule.Weakness::code)
                .allMatch(code -> code.matches("[a-z_]+"));
    }

    @ParameterizedTest
    @CsvSource({"0, NONE", "2, NONE", "3, DASHED", "7, DASHED", "8, SOLID"})
    void drawsNoLineAsMoreCertainThanItIs(int points, LineStyle style) {
        assertThat(LineStyle.of(points)).isEqualTo(style);
    }

    private static double[] first(double[] values, int count) {
        return java.util.Arrays.copyOf(values, count);
    }
}
