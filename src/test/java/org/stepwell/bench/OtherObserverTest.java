package org.stepwell.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class OtherObserverTest {

    /** The chances of the ceiling must come true as often as they say, else it is none. */
    @Test
    void whatItCallsLikelyComesTrueThatOften() {
        for (OtherFamily family : List.of(family("threshold_plain"), family("neighbours_copied"), family("ten_days"))) {
            OtherObserver ideal = new OtherObserver(family);
            double said = 0;
            double came = 0;
            double all = 0;
            for (int i = 0; i < 6; i++) {
                for (Classroom.Child child : OtherSimulator.classroom(family, 31 + i).children()) {
                    List<double[]> odds = ideal.odds(child);
                    for (int r = 0; r < odds.size(); r++) {
                        int best = best(odds.get(r));
                        said += odds.get(r)[best];
                        came += best == child.truth().get(r).ordinal() ? 1 : 0;
                        all++;
                    }
                }
            }
            assertThat(said / all).as(family.name).isCloseTo(came / all, within(0.05));
        }
    }

    @Test
    void theSameSeedIsTheSameClassroom() {
        OtherFamily plain = family("threshold_plain");
        assertThat(OtherSimulator.classroom(plain, 5).looks()).isEqualTo(OtherSimulator.classroom(plain, 5).looks());
        assertThat(OtherSimulator.classroom(plain, 5).looks()).isNotEqualTo(OtherSimulator.classroom(plain, 6).looks());
    }

    @Test
    void nobodyIsSeenBeforeComing() {
        Classroom room = OtherSimulator.classroom(family("late_arrivals"), 5);
        for (int c = 0; c < room.children().size(); c += 5) {
            assertThat(room.children().get(c).events().subList(0, 10)).allMatch(e -> e.notes().isEmpty());
        }
    }

    private static int best(double[] odds) {
        int best = 0;
        for (int t = 1; t < 3; t++) {
            best = odds[t] > odds[best] ? t : best;
        }
        return best;
    }

    private static OtherFamily family(String name) {
        return OtherFamily.all().stream().filter(f -> f.name.equals(name)).findFirst().orElseThrow();
    }
}
