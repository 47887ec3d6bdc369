package org.stepwell.bench;

import java.util.function.Consumer;
import org.stepwell.core.evidence.Help;

/**
 * How one kind of simulated classroom comes about. All numbers are inventions of the bench, none is the filter's. The
 * starting values are the plain classroom; a family changes some of them.
 */
final class Family {
    static final int STEPS = 5;

    /** How one adult sees: chances to note a step one or two lower, one higher, or any step at random. */
    static final class Eye {
        final String name;
        final double share;
        final double lower;
        final double twoLower;
        final double higher;
        final double random;

        Eye(String name, double share, double lower, double twoLower, double higher, double random) {
            this.name = name;
            this.share = share;
            this.lower = lower;
            this.twoLower = twoLower;
            this.higher = higher;
            this.random = random;
        }
    }

    final String name;
    int children = 22;
    int weeks = 8;
    int skills = 8;
    /** School days from the start of one skill to the start of the next. */
    int stride = 4;
    /** School days from the start of a skill to its due day. */
    int lead = 10;
    int firstExpected = 3;
    /** School days after the due day on which the expected step rises by one; 0 = never. */
    int risesAfter = 12;

    double[] paceWeight = {0.15, 0.2, 0.3, 0.2, 0.15};
    double[] paceUp = {0.008, 0.025, 0.06, 0.12, 0.22};
    /** Chances of steps 1-5 at the start, for the slowest and the quickest pace; the others lie between. */
    double[] startSlow = {0.7, 0.22, 0.06, 0.015, 0.005};

    double[] startQuick = {0.08, 0.22, 0.38, 0.25, 0.07};
    double[] shape = {1.2, 1.1, 0.9, 0.5};
    double forgetsPerBreakDay = 0.01;

    Eye[] eyes = {new Eye("teacher", 0.75, 0.13, 0.03, 0.07, 0.02), new Eye("aide", 0.25, 0.15, 0.04, 0.08, 0.03)};
    /** Chance per school day that a child is seen at the table. */
    double seen = 0.32;

    int looksPerSitting = 2;
    /** Chance that a further look of a sitting at the same skill just repeats the one before. */
    double repeats = 0.0;

    double cubes = 0.25;
    double prompt = 0.12;
    double modelled = 0.05;
    double promptLifts = 0.5;
    double modelledLifts = 0.8;
    /** Share of children who get most of the looks; 0 = all alike. */
    double favored = 0;

    double wrongChild = 0;
    int[] breakWeeks = {};
    boolean calendarGiven = true;
    /** Chance per school day that a child falls ill for a week. */
    double fallsIll = 0;
    /** The skill whose lessons teach nobody anything for three weeks; -1 = none. */
    int failedSkill = -1;

    int teachesNothingDays = 15;
    /** Whether the number asked is written down with each look; one of nine. */
    boolean numbersWritten = false;

    private Family(String name) {
        this.name = name;
    }

    static Family of(String name, Consumer<Family> changes) {
        Family family = new Family(name);
        changes.accept(family);
        return family;
    }

    double[] start(int pace) {
        double share = paceUp.length == 1 ? 0.5 : pace / (paceUp.length - 1.0);
        double[] start = new double[STEPS];
        for (int s = 0; s < STEPS; s++) {
            start[s] = startSlow[s] * (1 - share) + startQuick[s] * share;
        }
        return start;
    }

    /** Chance that this adult notes column + 1 of a child at row + 1 with this help. */
    double[][] noted(Eye eye, Help help) {
        double[][] chance = new double[STEPS][STEPS];
        for (int s = 0; s < STEPS; s++) {
            double[] row = new double[STEPS];
            row[Math.max(0, s - 1)] += eye.lower;
            row[Math.max(0, s - 2)] += eye.twoLower;
            row[Math.min(STEPS - 1, s + 1)] += eye.higher;
            row[s] += 1 - eye.lower - eye.twoLower - eye.higher - eye.random;
            for (int o = 0; o < STEPS; o++) {
                chance[s][lifted(o, 0, help)] += (row[o] + eye.random / STEPS) * (1 - lifts(help));
                chance[s][lifted(o, 1, help)] += (row[o] + eye.random / STEPS) * lifts(help);
            }
        }
        return chance;
    }

    private double lifts(Help help) {
        return help == Help.PROMPT ? promptLifts : help == Help.MODELLED ? modelledLifts : 0;
    }

    private static int lifted(int shown, int by, Help help) {
        return help == Help.CUBES ? Math.min(shown, 2) : Math.min(shown + by, Math.max(shown, 3));
    }
}
