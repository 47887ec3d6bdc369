package org.stepwell.core.evidence;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How likely a look is at each true step. A child mostly shows its own step, sometimes a lower or a higher one; the
 * chances fall by a constant factor per step away on each side. That shape keeps a stronger look from ever speaking
 * for a lower step (all its two-by-two minors are at least 0).
 */
final class Likelihoods {
    private static final int STEPS = 5;

    private final Parameters parameters;
    /** By help: chance to show column + 1 at true step row + 1. */
    private final Map<Help, double[][]> shown = new EnumMap<>(Help.class);

    private final Map<Help, double[][]> logShown = new EnumMap<>(Help.class);
    private final Map<Help, double[][]> logShownOrAbove = new EnumMap<>(Help.class);

    Likelihoods(Parameters parameters) {
        this.parameters = parameters;
        put(Help.NONE, parameters.above());
        put(Help.CUBES, parameters.aboveWithCubes());
        put(Help.PROMPT, parameters.aboveWithPrompt());
        put(Help.MODELLED, parameters.aboveWithModel());
    }

    private void put(Help help, double above) {
        double[][] chance = new double[STEPS][STEPS];
        double[][] log = new double[STEPS][STEPS];
        double[][] logTail = new double[STEPS][STEPS];
        for (int s = 0; s < STEPS; s++) {
            double sum = 0;
            for (int o = 0; o < STEPS; o++) {
                chance[s][o] = StrictMath.pow(o < s ? parameters.below() : above, Math.abs(o - s));
                sum += chance[s][o];
            }
            double tail = 0;
            for (int o = STEPS - 1; o >= 0; o--) {
                chance[s][o] /= sum;
                tail += chance[s][o];
                log[s][o] = StrictMath.log(chance[s][o]);
                logTail[s][o] = StrictMath.log(tail);
            }
        }
        shown.put(help, chance);
        logShown.put(help, log);
        logShownOrAbove.put(help, logTail);
    }

    /** Chance of each shown step at each true step, [true - 1][shown - 1], with this help. */
    double[][] shown(Help help) {
        return shown.get(help);
    }

    /**
     * The likelihood of one sitting, that is of all looks of a day at a skill, at each step; the largest is 1. Looks
     * of one sitting tell partly the same thing, so the more there are, the less each weighs, whatever their order.
     *
     * @param looks at least one, oldest first
     */
    double[] sitting(List<CountedLook> looks) {
        double[] log = new double[STEPS];
        double many = 0;
        for (CountedLook look : looks) {
            double weight = weight(look);
            many += weight;
            double[][] table = (look.atLeast() ? logShownOrAbove : logShown).get(look.look().help());
            double pull = look.notYet() ? weight * parameters.notYetWeight() : weight;
            for (int s = 0; s < STEPS; s++) {
                log[s] += pull * table[s][look.step() - 1];
            }
        }
        double each = parameters.lookWeight() / (1 + parameters.sittingShare() * Math.max(0, many - 1));
        double largest = Double.NEGATIVE_INFINITY;
        for (double value : log) {
            largest = Math.max(largest, value);
        }
        double[] likelihood = new double[STEPS];
        for (int s = 0; s < STEPS; s++) {
            likelihood[s] = StrictMath.exp(each * (log[s] - largest));
        }
        return likelihood;
    }

    private double weight(CountedLook look) {
        double weight = 1;
        if (look.look().help() == Help.PROMPT) {
            weight *= parameters.promptWeight();
        }
        if (look.look().help() == Help.MODELLED) {
            weight *= parameters.modelledWeight();
        }
        if (look.bySubstitute()) {
            weight *= parameters.substituteWeight();
        }
        if (look.checkItem()) {
            weight *= parameters.checkWeight();
        }
        return weight;
    }
}
