package org.stepwell.bench;

import java.util.List;

/**
 * The families that are reported. The thresholds of the weighed rules were chosen in sight of results on these families,
 * on other seeds: figures on them are in-sample until rules are scored on families nobody has looked at.
 */
final class Families {
    private Families() {}

    static List<Family> reported() {
        return List.of(
                Family.of("plain", f -> {}),
                Family.of("noisy_observers", f -> f.eyes = new Family.Eye[] {
                    new Family.Eye("teacher", 0.6, 0.2, 0.06, 0.12, 0.08),
                    new Family.Eye("aide", 0.4, 0.22, 0.08, 0.15, 0.12)
                }),
                Family.of("generous_observers", f -> f.eyes = new Family.Eye[] {
                    new Family.Eye("teacher", 0.7, 0.06, 0.01, 0.22, 0.02),
                    new Family.Eye("aide", 0.3, 0.05, 0.01, 0.28, 0.03)
                }),
                Family.of("breaks_and_absences", f -> {
                    f.weeks = 10;
                    f.breakWeeks = new int[] {3, 7};
                    f.calendarGiven = false;
                    f.forgetsPerBreakDay = 0.03;
                    f.fallsIll = 0.012;
                }),
                Family.of("few_looks", f -> {
                    f.seen = 0.16;
                    f.looksPerSitting = 1;
                }),
                Family.of("fast_class", f -> {
                    f.paceUp = new double[] {0.03, 0.06, 0.11, 0.18, 0.28};
                    f.startSlow = new double[] {0.45, 0.32, 0.16, 0.05, 0.02};
                }),
                Family.of("cubes_always_out", f -> f.cubes = 0.8),
                Family.of("looks_on_a_third", f -> f.favored = 0.33),
                Family.of("wrong_child_taps", f -> f.wrongChild = 0.08),
                Family.of("failed_lesson", f -> f.failedSkill = 3),
                Family.of("repeated_looks", f -> {
                    f.looksPerSitting = 4;
                    f.repeats = 0.6;
                    f.seen = 0.25;
                }),
                Family.of("short_unit", f -> {
                    f.weeks = 5;
                    f.skills = 5;
                    f.stride = 3;
                    f.lead = 7;
                    f.risesAfter = 0;
                }),
                Family.of("strict_observers", f -> f.eyes = new Family.Eye[] {
                    new Family.Eye("teacher", 1, 0.25, 0.06, 0.02, 0.02)
                }));
    }
}
