package org.stepwell.core.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Bayesian knowledge tracing as the two-step case of the filter. Equations: Corbett and Anderson 1995, User Modeling
 * and User-Adapted Interaction 4, 253-278. P(correct) = L(1-S) + (1-L)G; after an answer L' by Bayes, then
 * L = L' + (1-L')T. The expected numbers were worked out from these equations with a second program.
 */
class BeliefReferenceTest {
    private static final double TOLERANCE = 1e-11;

    @Test
    void tracesSixAnswers() {
        traces(
                new double[] {.3, .1, .1, .2},
                new int[] {1, 1, 0, 1, 1, 1},
                new double[] {.41, .684878048780, .843461538462, .639950859951, .826855563234, .884077027230},
                new double[] {
                    .658536585366, .910256410256, .587223587224, .883897719419, .974725440048, .994854044782
                },
                new double[] {
                    .692682926829, .919230769231, .628501228501, .895507947478, .977252896043, .995368640304
                });
    }

    @Test
    void tracesAWrongAnswerFirst() {
        double[] known = trace(.5, .2, .05, .25, new int[] {0, 1, 1})[2];
        assertThat(known).containsExactly(new double[] {.25, .647058823529, .899581589958}, within(TOLERANCE));
    }

    private static void traces(
            double[] given, int[] answers, double[] right, double[] afterAnswer, double[] afterLearning) {
        double[][] found = trace(given[0], given[1], given[2], given[3], answers);
        assertThat(found[0]).containsExactly(right, within(TOLERANCE));
        assertThat(found[1]).containsExactly(afterAnswer, within(TOLERANCE));
        assertThat(found[2]).containsExactly(afterLearning, within(TOLERANCE));
    }

    private static double[][] trace(double known, double learn, double slip, double guess, int[] answers) {
        Drift lesson = new Drift(new double[] {learn}, new double[] {0});
        Belief belief = new Belief(new double[] {1 - known, known});
        double[][] found = new double[3][answers.length];
        for (int i = 0; i < answers.length; i++) {
            double[] right = {guess, 1 - slip};
            found[0][i] = belief.chanceOf(right);
            belief.see(answers[i] == 1 ? right : new double[] {1 - guess, slip}, true);
            found[1][i] = belief.chances()[1];
            belief.pass(lesson, 1);
            found[2][i] = belief.chances()[1];
        }
        return found;
    }
}
