package org.stepwell.core.tier;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.evidence.ChildPicture;

class TierChancesTest {
    private static final long SEED = 20260313;

    @ParameterizedTest
    @CsvSource({
        "4 4,         4 4,     ON_LEVEL",
        "3 4,         4 4,     ON_LEVEL", // one of two is half, not fewer than half
        "3 3,         4 4,     SUPPORT",
        "3 3 4,       4 4 4,   SUPPORT", // one of three is fewer than half
        "3 3 4 4,     4 4 4 4, ON_LEVEL",
        "5 5 5 2,     4 4 4 3, EXTENSION", // three of four beyond
        "5 5 4 4,     4 4 4 4, ON_LEVEL",
        "5 5,         5 5,     EXTENSION", // step 5 is beyond whatever is expected
        "5 4,         4 4,     ON_LEVEL",
        "1,           4,       ON_LEVEL", // one due skill: no tiers
    })
    void knownStepsMeanOneTier(String steps, String expected, Tier tier) {
        assertEquals(tier, TierChances.meant(ints(steps), ints(expected)));
    }

    @Test
    void theChancesAreThoseOfEveryCombinationOfSteps() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int round = 0; round < 40; round++) {
            int skills = 2 + round % 4;
            TreeMap<String, Integer> due = new TreeMap<>();
            for (int s = 0; s < skills; s++) {
                due.put("S" + s, 1 + random.nextInt(5));
            }
            List<ChildPicture.Branch> branches = new ArrayList<>();
            for (double weight : new double[] {0.2, 0.5, 0.3}) {
                Map<String, double[]> chances = new TreeMap<>();
                due.keySet().forEach(s -> chances.put(s, chances(random)));
                branches.add(new ChildPicture.Branch(weight, chances));
            }
            ChildPicture picture =
                    new ChildPicture("C1", java.time.LocalDate.of(2026, 3, 13), new TreeMap<>(), branches);
            TierChances told = TierChances.of(picture, due);
            double[] counted = counted(branches, due);
            for (Tier tier : Tier.values()) {
                assertEquals(counted[tier.ordinal()], told.of(tier), 1e-12, "seed " + SEED + " round " + round);
            }
        }
    }

    /** Adds up the chance of all 5^n combinations of true steps. */
    private static double[] counted(List<ChildPicture.Branch> branches, TreeMap<String, Integer> due) {
        double[] sums = new double[3];
        List<String> skills = List.copyOf(due.keySet());
        int[] expected = due.values().stream().mapToInt(Integer::intValue).toArray();
        int all = (int) StrictMath.pow(5, skills.size());
        for (ChildPicture.Branch branch : branches) {
            for (int code = 0; code < all; code++) {
                int[] steps = new int[skills.size()];
                double chance = branch.weight();
                int rest = code;
                for (int s = 0; s < steps.length; s++) {
                    steps[s] = 1 + rest % 5;
                    rest /= 5;
                    chance *= branch.chances().get(skills.get(s))[steps[s] - 1];
                }
                sums[TierChances.meant(steps, expected).ordinal()] += chance;
            }
        }
        return sums;
    }

    private static double[] chances(SplittableRandom random) {
        double[] values = random.doubles(5, 0.01, 1).toArray();
        double sum = java.util.Arrays.stream(values).sum();
        return java.util.Arrays.stream(values).map(v -> v / sum).toArray();
    }

    private static int[] ints(String words) {
        return java.util.Arrays.stream(words.strip().split("\\s+")).mapToInt(Integer::parseInt).toArray();
    }
}
