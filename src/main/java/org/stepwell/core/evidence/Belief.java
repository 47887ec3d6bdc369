package org.stepwell.core.evidence;

/**
 * Chances over ordered steps of one skill under one assumption, moved on by days and by what is seen: the forward
 * recursion of a hidden Markov chain. With two steps, no way down and one day per answer it is Bayesian knowledge
 * tracing (Corbett and Anderson 1995, User Modeling and User-Adapted Interaction 4, 253-278).
 */
final class Belief {
    private double[] chances;
    private double logEvidence;

    /** @param start chances before anything was seen, adding up to 1 */
    Belief(double[] start) {
        chances = start.clone();
    }

    /** Moves on by days. */
    void pass(Drift drift, int days) {
        if (days > 0) {
            chances = drift.after(chances, days);
        }
    }

    /**
     * Takes in what was seen.
     *
     * @param likelihood per step, how likely it is to see this at that step, up to a common factor; at least one is
     *     above 0 where the chance is
     * @param weighs whether it speaks for or against the assumption itself
     */
    void see(double[] likelihood, boolean weighs) {
        double[] joint = new double[chances.length];
        double sum = 0;
        for (int s = 0; s < joint.length; s++) {
            joint[s] = chances[s] * likelihood[s];
            sum += joint[s];
        }
        for (int s = 0; s < joint.length; s++) {
            joint[s] /= sum;
        }
        chances = joint;
        if (weighs) {
            logEvidence += StrictMath.log(sum);
        }
    }

    /** The chance of seeing something, given its likelihood at each step. */
    double chanceOf(double[] likelihood) {
        double sum = 0;
        for (int s = 0; s < chances.length; s++) {
            sum += chances[s] * likelihood[s];
        }
        return sum;
    }

    /** The chances now. */
    double[] chances() {
        return chances.clone();
    }

    /** Natural logarithm of how likely everything seen so far was under this assumption. */
    double logEvidence() {
        return logEvidence;
    }
}
