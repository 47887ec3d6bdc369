package org.stepwell.core.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;

/**
 * The filter against a second way to the same numbers that shares no code with it: every path of hidden steps over
 * every single day is written out, weighed and added up.
 */
class EveryPathTest {
    private static final LocalDate MONDAY = LocalDate.parse("2026-01-05");
    private static final int DAYS = 9;
    private static final Progression NONE = new Progression("none", List.of(), List.of());
    private static final Parameters P = Parameters.shipped();

    @Test
    void agreesWithTheSumOverEveryPath() {
        long seed = 20260105;
        Random random = new Random(seed);
        for (int round = 0; round < 60; round++) {
            Pacing pacing = new Pacing(List.of(
                    new PacingRow("A", MONDAY.plusDays(random.nextInt(6)), MONDAY.plusDays(7), 3),
                    new PacingRow("B", MONDAY.plusDays(random.nextInt(6)), MONDAY.plusDays(7), 3)));
            SchoolCalendar calendar = random.nextBoolean()
                    ? new SchoolCalendar(List.of())
                    : new SchoolCalendar(List.of(
                            new SchoolCalendar.Break(MONDAY.plusDays(2), MONDAY.plusDays(3), "away")));
            List<CountedLook> looks = new ArrayList<>();
            for (int i = 0, n = random.nextInt(6); i < n; i++) {
                looks.add(look(random));
            }
            LocalDate day = MONDAY.plusDays(DAYS - 1);
            ChildPicture picture = new EvidenceFilter(P).picture("C1", looks, pacing, calendar, day);
            Map<String, double[]> expected = sumOverPaths(looks, pacing, calendar, day);
            for (String skill : List.of("A", "B")) {
                SkillEstimate estimate = picture.skills().get(skill);
                if (looks.stream().noneMatch(l -> l.skill().equals(skill))) {
                    assertThat(estimate.seen()).isFalse();
                    continue;
                }
                for (int s = 0; s < 5; s++) {
                    assertThat(estimate.chances().get(s))
                            .as("seed %d round %d skill %s step %d", seed, round, skill, s + 1)
                            .isCloseTo(expected.get(skill)[s], within(1e-12));
                }
            }
        }
    }

    private static CountedLook look(Random random) {
        LocalDate day = MONDAY.plusDays(random.nextInt(DAYS));
        LookMaker maker = LookMaker.look("C1", random.nextBoolean() ? "A" : "B", day, 1 + random.nextInt(5))
                .help(Help.values()[random.nextInt(4)]);
        switch (random.nextInt(5)) {
            case 0 -> maker.tags("substitute");
            case 1 -> maker.tags("not_yet");
            case 2 -> maker.kind(Kind.UNIT_CHECK);
            default -> {}
        }
        return java.util.Objects.requireNonNull(EffectiveLooks.counted(maker.make(), NONE));
    }

    private static Map<String, double[]> sumOverPaths(
            List<CountedLook> looks, Pacing pacing, SchoolCalendar calendar, LocalDate day) {
        Map<String, double[]> result = new HashMap<>(Map.of("A", new double[5], "B", new double[5]));
        double all = 0;
        for (Parameters.Pace pace : P.paces()) {
            double[] a = endWeights("A", pace, looks, pacing, calendar, day);
            double[] b = endWeights("B", pace, looks, pacing, calendar, day);
            for (int i = 0; i < 5; i++) {
                for (int j = 0; j < 5; j++) {
                    double joint = pace.weight() * a[i] * b[j];
                    result.get("A")[i] += joint;
                    result.get("B")[j] += joint;
                    all += joint;
                }
            }
        }
        for (double[] sums : result.values()) {
            for (int s = 0; s < 5; s++) {
                sums[s] /= all;
            }
        }
        return result;
    }

    /** Weight of all paths that end at each step, all looks taken in. */
    private static double[] endWeights(
            String skill,
            Parameters.Pace pace,
            List<CountedLook> looks,
            Pacing pacing,
            SchoolCalendar calendar,
            LocalDate day) {
        Map<LocalDate, List<CountedLook>> byDay = new TreeMap<>();
        looks.stream()
                .filter(l -> l.skill().equals(skill))
                .forEach(l -> byDay.computeIfAbsent(l.day(), d -> new ArrayList<>()).add(l));
        LocalDate taught = pacing.taughtFrom(skill, calendar).orElseThrow();
        LocalDate first = byDay.isEmpty() ? day : byDay.keySet().iterator().next();
        LocalDate start = taught.minusDays(1).isBefore(first) ? taught.minusDays(1) : first;
        double[] end = new double[5];
        for (int s = 0; s < 5; s++) {
            walk(pace.start().get(s) * seen(byDay.get(start), s), s, start, day, taught, calendar, pace, byDay, end);
        }
        return end;
    }

    private static void walk(
            double weight,
            int step,
            LocalDate at,
            LocalDate day,
            LocalDate taught,
            SchoolCalendar calendar,
            Parameters.Pace pace,
            Map<LocalDate, List<CountedLook>> byDay,
            double[] end) {
        if (at.equals(day)) {
            end[step] += weight;
            return;
        }
        LocalDate next = at.plusDays(1);
        boolean weekend = next.getDayOfWeek() == DayOfWeek.SATURDAY || next.getDayOfWeek() == DayOfWeek.SUNDAY;
        double up = 0;
        double down = 0;
        if (!weekend && !calendar.isSchoolDay(next)) {
            down = P.breakDown();
        } else if (!weekend && next.isBefore(taught)) {
            up = P.untaughtUp();
            down = P.untaughtDown();
        } else if (!weekend) {
            up = step < 4 ? pace.up() * P.upShape().get(step) : 0;
        }
        up = step < 4 ? up : 0;
        down = step > 0 ? down : 0;
        for (int to = Math.max(0, step - 1); to <= Math.min(4, step + 1); to++) {
            double chance = to == step ? 1 - up - down : to > step ? up : down;
            if (chance > 0) {
                double onward = weight * chance * seen(byDay.get(next), to);
                walk(onward, to, next, day, taught, calendar, pace, byDay, end);
            }
        }
    }

    private static double seen(@org.jspecify.annotations.Nullable List<CountedLook> sitting, int s) {
        if (sitting == null) {
            return 1;
        }
        double many = sitting.stream().mapToDouble(EveryPathTest::weight).sum();
        double share = P.lookWeight() / (1 + P.sittingShare() * Math.max(0, many - 1));
        double product = 1;
        for (CountedLook look : sitting) {
            double above =
                    switch (look.look().help()) {
                        case NONE -> P.above();
                        case CUBES -> P.aboveWithCubes();
                        case PROMPT -> P.aboveWithPrompt();
                        case MODELLED -> P.aboveWithModel();
                    };
            double total = 0;
            double those = 0;
            for (int shown = 0; shown < 5; shown++) {
                double chance = Math.pow(shown < s ? P.below() : above, Math.abs(shown - s));
                total += chance;
                boolean fits = look.atLeast() ? shown >= look.step() - 1 : shown == look.step() - 1;
                those += fits ? chance : 0;
            }
            double more = look.notYet() ? P.notYetWeight() : 1;
            product *= Math.pow(those / total, share * more * weight(look));
        }
        return product;
    }

    private static double weight(CountedLook look) {
        double weight = look.bySubstitute() ? P.substituteWeight() : 1;
        weight *= look.checkItem() ? P.checkWeight() : 1;
        return weight
                * switch (look.look().help()) {
                    case PROMPT -> P.promptWeight();
                    case MODELLED -> P.modelledWeight();
                    default -> 1;
                };
    }
}
