package org.stepwell.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Families nobody has looked at: every number that {@link Family} and {@link OtherFamily} leave open is drawn from a wide
 * range by a seed, for one simulation and the other in turn. Thresholds may be chosen in sight of some seeds as long as what
 * is reported comes from others.
 */
final class DrawnFamilies {
    private final SplittableRandom random;

    private DrawnFamilies(long seed) {
        this.random = new SplittableRandom(seed);
    }

    /** A family of the first simulation; its name holds the seed. */
    static Family ladder(long seed) {
        return new DrawnFamilies(seed * 2).ladder("ladder_" + seed);
    }

    /** A family of the simulation with continuous ability; its name holds the seed. */
    static OtherFamily ability(long seed) {
        return new DrawnFamilies(seed * 2 + 1).ability("ability_" + seed);
    }

    private Family ladder(String name) {
        return Family.of(name, f -> {
            f.children = whole(12, 30);
            f.skills = whole(4, 10);
            f.stride = whole(2, 5);
            f.lead = whole(5, 12);
            f.weeks = Math.max(3, (f.skills * f.stride + f.lead) / 5 + whole(0, 2));
            f.risesAfter = chance(0.6) ? whole(8, 15) : 0;
            double quicker = StrictMath.exp(between(-0.4, 0.4));
            for (int p = 0; p < f.paceUp.length; p++) {
                f.paceUp[p] = Math.min(0.4, f.paceUp[p] * quicker);
            }
            double further = between(0, 0.35);
            for (int s = 0; s < Family.STEPS; s++) {
                f.startSlow[s] = (1 - further) * f.startSlow[s] + further * f.startQuick[s];
            }
            f.eyes = eyes();
            f.seen = between(0.12, 0.45);
            f.looksPerSitting = whole(1, 3);
            f.repeats = chance(0.3) ? between(0.1, 0.6) : 0;
            f.cubes = between(0.05, 0.7);
            f.prompt = between(0, 0.25);
            f.modelled = between(0, 0.05);
            f.promptLifts = between(0.3, 0.7);
            f.favored = chance(0.25) ? 0.33 : 0;
            f.wrongChild = chance(0.25) ? between(0.02, 0.08) : 0;
            f.breakWeeks = f.weeks > 5 && chance(0.4) ? new int[] {whole(2, f.weeks - 3)} : new int[0];
            f.calendarGiven = chance(0.5);
            f.fallsIll = chance(0.3) ? between(0.005, 0.015) : 0;
            f.failedSkill = chance(0.2) ? whole(0, f.skills - 1) : -1;
            f.numbersWritten = chance(0.5);
        });
    }

    private Family.Eye[] eyes() {
        List<Family.Eye> eyes = new ArrayList<>();
        double teacher = between(0.5, 1);
        for (String one : List.of("teacher", "aide")) {
            double share = one.equals("teacher") ? teacher : 1 - teacher;
            eyes.add(new Family.Eye(one, share, between(0.05, 0.22), between(0, 0.07), between(0.04, 0.22),
                    between(0.01, 0.1)));
        }
        return eyes.toArray(Family.Eye[]::new);
    }

    private OtherFamily ability(String name) {
        return OtherFamily.of(name, f -> {
            f.children = whole(12, 30);
            f.skills = whole(4, 9);
            f.stride = whole(2, 5);
            f.lead = whole(4, 10);
            f.days = 5 * Math.max(3, (f.skills * f.stride + f.lead) / 5 + whole(0, 3));
            f.risesAfter = chance(0.6) ? whole(8, 15) : 0;
            f.startMean = between(0.3, 1.2);
            f.startSpread = between(0.6, 1.1);
            f.growth = between(0.04, 0.11);
            f.growthSpread = between(0.3, 0.8);
            f.slowsAfter = chance(0.7) ? between(15, 40) : 0;
            f.error = between(0.4, 0.75);
            f.bias = between(-0.35, 0.35);
            f.slip = between(0.02, 0.08);
            f.promptLift = between(0.3, 0.7);
            f.seen = between(0.15, 0.45);
            f.looksPerVisit = whole(1, 3);
            f.evenAttention = chance(0.7);
            f.copies = chance(0.25) ? between(0.03, 0.12) : 0;
            f.cubes = between(0.05, 0.6);
            f.prompt = between(0, 0.2);
            f.numbersWritten = chance(0.5);
            f.lateArrival = chance(0.2) ? whole(5, 12) : 0;
        });
    }

    private double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private int whole(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    private boolean chance(double chance) {
        return random.nextDouble() < chance;
    }
}
