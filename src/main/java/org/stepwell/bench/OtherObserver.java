package org.stepwell.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.stepwell.core.tier.Tier;

/**
 * One who knows how the classrooms of {@link OtherSimulator} come about: a crowd of children drawn as the simulation draws
 * them, each weighted by how likely it is to have made this child's record. With few children of the crowd left
 * that could have made it, its answer is less sharp than the best possible one; the crowd is large enough for the records of
 * the families here.
 */
final class OtherObserver {
    private static final int CROWD = 6000;
    private static final long SEED = 555;

    private final OtherFamily family;
    private final List<OtherSimulator.Nature> crowd = new ArrayList<>();
    private final Tier[][] tiers;

    OtherObserver(OtherFamily family) {
        this.family = family;
        SplittableRandom random = new SplittableRandom(SEED);
        int reviews = family.days / family.reviewEvery;
        tiers = new Tier[CROWD][reviews];
        for (int i = 0; i < CROWD; i++) {
            OtherSimulator.Nature nature = OtherSimulator.nature(family, random);
            crowd.add(nature);
            for (int r = 0; r < reviews; r++) {
                tiers[i][r] = OtherSimulator.tier(family, nature, (r + 1) * family.reviewEvery - 1);
            }
        }
    }

    /** The most probable tier on each review day. */
    List<Tier> tiers(Classroom.Child child) {
        return odds(child).stream().map(OtherObserver::best).toList();
    }

    /** The chances of support, on level and extension on each review day. */
    List<double[]> odds(Classroom.Child child) {
        double[] log = new double[CROWD];
        List<double[]> days = new ArrayList<>();
        for (Classroom.Event event : child.events()) {
            for (Classroom.Note note : event.notes()) {
                take(note, event.index(), log);
            }
            if (event.index() % family.reviewEvery == family.reviewEvery - 1) {
                days.add(odds(log, event.index() / family.reviewEvery));
            }
        }
        return days;
    }

    /** A copied look shows some other child of the class: on average, what the whole crowd shows. */
    private void take(Classroom.Note note, int day, double[] log) {
        double[] own = new double[CROWD];
        double all = 0;
        for (int i = 0; i < CROWD; i++) {
            own[i] = OtherSimulator.noted(
                    family, crowd.get(i).ability(family, note.skill(), day), note.help(), note.step());
            all += own[i] / CROWD;
        }
        for (int i = 0; i < CROWD; i++) {
            log[i] += StrictMath.log((1 - family.copies) * own[i] + family.copies * all);
        }
    }

    private double[] odds(double[] log, int review) {
        double largest = Double.NEGATIVE_INFINITY;
        for (double value : log) {
            largest = Math.max(largest, value);
        }
        double[] odds = new double[3];
        double sum = 0;
        for (int i = 0; i < CROWD; i++) {
            double weight = StrictMath.exp(log[i] - largest);
            odds[tiers[i][review].ordinal()] += weight;
            sum += weight;
        }
        for (int t = 0; t < 3; t++) {
            odds[t] /= sum;
        }
        return odds;
    }

    private static Tier best(double[] odds) {
        int best = odds[1] >= odds[0] && odds[1] >= odds[2] ? 1 : odds[0] >= odds[2] ? 0 : 2;
        return Tier.values()[best];
    }
}
