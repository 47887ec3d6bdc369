package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;

/**
 * Turns the looks at a child into chances of the five steps: a recursive filter per skill, run for a few paces of
 * learning side by side, the paces weighted by how well each foretold the child's own looks over all skills.
 *
 * <p>Between looks the chances drift up while the skill is taught and down over breaks; after too long without a look
 * they stand still. A pace starts afresh with each unit: older looks shift the chances of a skill, not the weights of
 * the paces. Nothing depends on the order in which looks arrive. Immutable; make one and share it.
 */
public final class EvidenceFilter {
    private static final int STEPS = 5;

    private final Parameters parameters;
    private final Likelihoods likelihoods;
    private final Drift[] taught;
    private final Drift untaught;
    private final Drift onBreak;
    private final double[][] starts;

    /** Prepares the tables for a set of parameters. */
    public EvidenceFilter(Parameters parameters) {
        this.parameters = parameters;
        this.likelihoods = new Likelihoods(parameters);
        List<Double> shape = parameters.upShape();
        this.taught = new Drift[parameters.paces().size()];
        for (int b = 0; b < taught.length; b++) {
            double[] up = new double[STEPS - 1];
            for (int s = 0; s < up.length; s++) {
                up[s] = Math.min(0.5, parameters.paces().get(b).up() * shape.get(s));
            }
            taught[b] = new Drift(up, new double[STEPS - 1]);
        }
        this.untaught = new Drift(all(parameters.untaughtUp()), all(parameters.untaughtDown()));
        this.onBreak = new Drift(all(0), all(parameters.breakDown()));
        this.starts = parameters.paces().stream()
                .map(pace -> pace.start().stream().mapToDouble(Double::doubleValue).toArray())
                .toArray(double[][]::new);
    }

    private static double[] all(double value) {
        double[] values = new double[STEPS - 1];
        java.util.Arrays.fill(values, value);
        return values;
    }

    /**
     * Reads the evidence on one child.
     *
     * @param child the school's own id
     * @param looks the looks at this child that count; those after the day are left out
     * @param pacing says when each skill was taught
     * @param calendar says which days were school days
     * @param day the day of the question
     */
    public Reading read(
            String child, Collection<CountedLook> looks, Pacing pacing, SchoolCalendar calendar, LocalDate day) {
        return Reading.of(this, child, looks, pacing, calendar, day);
    }

    /** The picture alone, for who needs neither reasons nor what-ifs. */
    public ChildPicture picture(
            String child, Collection<CountedLook> looks, Pacing pacing, SchoolCalendar calendar, LocalDate day) {
        return read(child, looks, pacing, calendar, day).picture();
    }

    /** The numbers it works with. */
    public Parameters parameters() {
        return parameters;
    }

    Likelihoods likelihoods() {
        return likelihoods;
    }

    Drift taught(int pace) {
        return taught[pace];
    }

    Drift untaught() {
        return untaught;
    }

    Drift onBreak() {
        return onBreak;
    }

    Belief[] starts() {
        Belief[] beliefs = new Belief[starts.length];
        for (int b = 0; b < beliefs.length; b++) {
            beliefs[b] = new Belief(starts[b]);
        }
        return beliefs;
    }
}
