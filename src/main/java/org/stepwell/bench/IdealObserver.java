package org.stepwell.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.TierChances;

/**
 * Exact inference on one child's own record by one who knows how the data came about: the family's paces, starts,
 * growth, breaks, absences and how each adult sees. Names the most probable tier and has no brake. The ceiling.
 */
final class IdealObserver {
    private static final int STEPS = Family.STEPS;

    private final Family family;
    private final Simulator plan;
    private final Map<String, double[][]> noted = new ConcurrentHashMap<>();
    /** Share of the class at each step by day and skill: what a look at the wrong child shows. */
    private double[][][] crowd = new double[0][][];

    IdealObserver(Family family) {
        this.family = family;
        this.plan = Simulator.planOf(family);
        if (family.wrongChild > 0) {
            this.crowd = crowd();
        }
    }

    /** The most probable tier on each review day. */
    List<Tier> tiers(Classroom.Child child) {
        return odds(child).stream().map(IdealObserver::mostProbable).toList();
    }

    /** The chances of support, on-level and extension on each review day. */
    List<double[]> odds(Classroom.Child child) {
        int paces = family.paceUp.length;
        double[] weight = family.paceWeight.clone();
        double[][][] chance = starts();
        List<double[]> days = new ArrayList<>();
        for (Classroom.Event event : child.events()) {
            for (int p = 0; p < paces; p++) {
                for (int k = 0; k < family.skills; k++) {
                    chance[p][k] = passed(chance[p][k], p, k, event.index(), event.away(), event.ill());
                }
            }
            Classroom.Note last = null;
            for (Classroom.Note note : event.notes()) {
                take(note, last, event.index(), weight, chance);
                last = note;
            }
            if (event.index() % 5 == 4) {
                days.add(odds(weight, chance, event.index()));
            }
        }
        return days;
    }

    private void take(
            Classroom.Note note, Classroom.@org.jspecify.annotations.Nullable Note last, int day, double[] weight,
            double[][][] chance) {
        double[][] table = noted(note.eye(), note.help());
        int k = note.skill();
        double total = 0;
        double other = 0;
        for (int s = 0; s < STEPS && family.wrongChild > 0; s++) {
            other += crowd[day][k][s] * table[s][note.step()];
        }
        for (int p = 0; p < weight.length; p++) {
            double sum = 0;
            for (int s = 0; s < STEPS; s++) {
                double seen = (1 - family.wrongChild) * table[s][note.step()] + family.wrongChild * other;
                if (note.sameSitting() && last != null) {
                    seen = (1 - family.repeats) * seen + (last.step() == note.step() ? family.repeats : 0);
                }
                chance[p][k][s] *= seen;
                sum += chance[p][k][s];
            }
            for (int s = 0; s < STEPS && sum > 0; s++) {
                chance[p][k][s] /= sum;
            }
            weight[p] *= sum;
            total += weight[p];
        }
        for (int p = 0; p < weight.length; p++) {
            weight[p] /= total;
        }
    }

    private double[] odds(double[] weight, double[][][] chance, int day) {
        int[] skills = plan.dueOn(day);
        int[] expected = java.util.Arrays.stream(skills).map(k -> plan.expected(k, day)).toArray();
        double[] odds = new double[3];
        for (int p = 0; p < weight.length; p++) {
            double[][] due = new double[skills.length][];
            for (int i = 0; i < skills.length; i++) {
                due[i] = chance[p][skills[i]];
            }
            double[] own = TierChances.of(due, expected);
            for (int t = 0; t < 3; t++) {
                odds[t] += weight[p] * own[t];
            }
        }
        return odds;
    }

    private static Tier mostProbable(double[] odds) {
        int best = odds[1] >= odds[0] && odds[1] >= odds[2] ? 1 : odds[0] >= odds[2] ? 0 : 2;
        return Tier.values()[best];
    }

    private double[] passed(double[] chance, int pace, int skill, int day, boolean away, boolean ill) {
        double[] next = new double[STEPS];
        for (int s = 0; s < STEPS; s++) {
            double up = !away && !ill && s < STEPS - 1 ? plan.up(pace, s, skill, day) : 0;
            double down = away && s > 0 ? family.forgetsPerBreakDay : 0;
            next[s] += chance[s] * (1 - up - down);
            if (up > 0) {
                next[s + 1] += chance[s] * up;
            }
            if (down > 0) {
                next[s - 1] += chance[s] * down;
            }
        }
        return next;
    }

    private double[][][] starts() {
        double[][][] chance = new double[family.paceUp.length][family.skills][];
        for (int p = 0; p < chance.length; p++) {
            for (int k = 0; k < family.skills; k++) {
                chance[p][k] = family.start(p);
            }
        }
        return chance;
    }

    private double[][][] crowd() {
        int days = family.weeks * 5;
        double[][][] shares = new double[days][family.skills][STEPS];
        double[][][] chance = starts();
        for (int day = 0; day < days; day++) {
            int week = day / 5;
            boolean away = java.util.Arrays.stream(family.breakWeeks).anyMatch(w -> w == week);
            for (int p = 0; p < chance.length; p++) {
                for (int k = 0; k < family.skills; k++) {
                    chance[p][k] = passed(chance[p][k], p, k, day, away, false);
                    for (int s = 0; s < STEPS; s++) {
                        shares[day][k][s] += family.paceWeight[p] * chance[p][k][s];
                    }
                }
            }
        }
        return shares;
    }

    private double[][] noted(int eye, Help help) {
        return noted.computeIfAbsent(eye + help.code(), any -> family.noted(family.eyes[eye], help));
    }
}
