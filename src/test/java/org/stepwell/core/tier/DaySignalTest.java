package org.stepwell.core.tier;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.evidence.DayStep;

/**
 * How often the counting rules are wrong, found by running them over every sequence of days. The expected values are
 * exact binomial sums, computed by hand from the formula: chance of at least k of n = sum of C(n, i) p^i (1-p)^(n-i).
 */
class DaySignalTest {
    private static final DaySignal.Window FOUR =
            RuleFile.shipped(RuleFile.CONVENTIONAL).settings().signal();

    @ParameterizedTest
    @CsvSource({"0.5, 0.3125", "0.8, 0.8192", "0.9, 0.9477", "0.6, 0.4752"})
    void meetsAsOftenAsThreeOrMoreOfFour(double p, double expected) {
        assertEquals(expected, chance(DaySignal.MEETS, 4, p, FOUR), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"0.2, 0.8192", "0.5, 0.3125", "0.8, 0.0272"})
    void isBelowAsOftenAsOneOrFewerOfFour(double p, double expected) {
        assertEquals(expected, chance(DaySignal.BELOW, 4, p, FOUR), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"0.5, 0.09765625", "0.8, 0.67108864"})
    void twoIndependentReviewsMeetLessOften(double p, double expected) {
        double once = chance(DaySignal.MEETS, 4, p, FOUR);
        assertEquals(expected, once * once, 1e-12);
    }

    @ParameterizedTest
    @CsvSource({
        "4,  3,  0.6, 0.4752",
        "4,  3,  0.8, 0.8192",
        "5,  4,  0.6, 0.33696",
        "5,  4,  0.8, 0.73728",
        "5,  4,  0.9, 0.91854",
        "10, 8,  0.6, 0.1672897536",
        "10, 8,  0.8, 0.6777995264",
        "10, 8,  0.9, 0.9298091736",
        "20, 16, 0.5, 0.00590896606",
        "20, 16, 0.6, 0.05095195319",
        "20, 16, 0.7, 0.23750777888",
        "20, 16, 0.8, 0.62964826390",
        "20, 16, 0.9, 0.95682550472",
        "2,  2,  0.8, 0.64",
        "3,  3,  0.8, 0.512",
        "3,  3,  0.9, 0.729",
    })
    void otherRulesOfThumbPassAsOftenAsTheirFormulaSays(int n, int k, double p, double expected) {
        assertEquals(expected, chance(DaySignal.MEETS, n, p, new DaySignal.Window(n, k, 0, n)), 1e-10);
    }

    @Test
    void onlyTheLastDaysCount() {
        List<DayStep.Reading> days = readings(0b111_0001, 7);
        assertEquals(DaySignal.MEETS, DaySignal.of(days.subList(0, 7), FOUR));
        assertEquals(DaySignal.BELOW, DaySignal.of(days.subList(0, 4), FOUR));
    }

    @Test
    void aHiddenDayIsNeitherBelowNorMet() {
        DayStep.Reading hidden = DayStep.Reading.HIDDEN;
        DayStep.Reading met = DayStep.Reading.MEETS;
        DayStep.Reading below = DayStep.Reading.BELOW;
        assertEquals(DaySignal.HIDDEN, DaySignal.of(List.of(hidden, hidden, hidden, hidden), FOUR));
        assertEquals(DaySignal.HIDDEN, DaySignal.of(List.of(below, below, hidden, hidden), FOUR));
        assertEquals(DaySignal.BELOW, DaySignal.of(List.of(below, below, below, hidden), FOUR));
        assertEquals(DaySignal.MEETS, DaySignal.of(List.of(met, hidden, met, met), FOUR));
        assertEquals(DaySignal.MIXED, DaySignal.of(List.of(met, met, hidden, below), FOUR));
        assertEquals(DaySignal.HIDDEN, DaySignal.of(List.of(below, below, hidden), FOUR), "three must all agree");
    }

    private static double chance(DaySignal wanted, int n, double p, DaySignal.Window window) {
        double sum = 0;
        for (int code = 0; code < 1 << n; code++) {
            if (DaySignal.of(readings(code, n), window) == wanted) {
                int met = Integer.bitCount(code);
                sum += StrictMath.pow(p, met) * StrictMath.pow(1 - p, n - met);
            }
        }
        return sum;
    }

    /** Bit i set: day i, oldest first, reaches the step. */
    private static List<DayStep.Reading> readings(int code, int n) {
        List<DayStep.Reading> days = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            days.add((code >> i & 1) == 1 ? DayStep.Reading.MEETS : DayStep.Reading.BELOW);
        }
        return days;
    }
}
