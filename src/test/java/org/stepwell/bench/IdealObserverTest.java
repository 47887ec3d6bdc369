package org.stepwell.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stepwell.core.tier.Tier;

class IdealObserverTest {

    /** Chances from the true process must come true as often as they say, in every family, also in the odd ones. */
    @Test
    void whatItCallsLikelyComesTrueThatOften() {
        for (Family family : Families.reported()) {
            IdealObserver ideal = new IdealObserver(family);
            double[] said = new double[3];
            double[] came = new double[3];
            double sharpSaid = 0;
            double sharpCame = 0;
            double all = 0;
            for (int i = 0; i < 12; i++) {
                for (Classroom.Child child : Simulator.classroom(family, 77 + i).children()) {
                    List<double[]> odds = ideal.odds(child);
                    for (int r = 0; r < odds.size(); r++) {
                        Tier truth = child.truth().get(r);
                        for (int t = 0; t < 3; t++) {
                            said[t] += odds.get(r)[t];
                        }
                        came[truth.ordinal()]++;
                        int best = best(odds.get(r));
                        sharpSaid += odds.get(r)[best];
                        sharpCame += best == truth.ordinal() ? 1 : 0;
                        all++;
                    }
                }
            }
            for (int t = 0; t < 3; t++) {
                assertThat(said[t] / all).as(family.name).isCloseTo(came[t] / all, within(0.035));
            }
            assertThat(sharpSaid / all).as(family.name).isCloseTo(sharpCame / all, within(0.035));
        }
    }

    @Test
    void theSameSeedIsTheSameClassroom() {
        Family plain = Families.reported().getFirst();
        assertThat(Simulator.classroom(plain, 5).looks()).isEqualTo(Simulator.classroom(plain, 5).looks());
        assertThat(Simulator.classroom(plain, 5).looks()).isNotEqualTo(Simulator.classroom(plain, 6).looks());
    }

    private static int best(double[] odds) {
        int best = 0;
        for (int t = 1; t < 3; t++) {
            best = odds[t] > odds[best] ? t : best;
        }
        return best;
    }
}
