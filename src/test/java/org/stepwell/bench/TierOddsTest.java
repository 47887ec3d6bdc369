package org.stepwell.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.stepwell.core.tier.Tier;

class TierOddsTest {

    @Test
    void fewerThanHalfAtTheExpectedStepNeedsSupport() {
        assertThat(TierOdds.of(new int[] {3, 2, 2}, new int[] {3, 3, 3})).isEqualTo(Tier.SUPPORT);
        assertThat(TierOdds.of(new int[] {3, 2}, new int[] {3, 3})).isEqualTo(Tier.ON_LEVEL);
    }

    @Test
    void threeQuartersOneStepBeyondIsReadyForExtension() {
        assertThat(TierOdds.of(new int[] {4, 4, 5, 3}, new int[] {3, 3, 3, 3})).isEqualTo(Tier.EXTENSION);
        assertThat(TierOdds.of(new int[] {4, 4, 3}, new int[] {3, 3, 3})).isEqualTo(Tier.ON_LEVEL);
        assertThat(TierOdds.of(new int[] {5, 5}, new int[] {5, 5})).isEqualTo(Tier.EXTENSION);
    }

    @Test
    void oneDueSkillLeavesEverybodyOnLevel() {
        assertThat(TierOdds.of(new int[] {1}, new int[] {4})).isEqualTo(Tier.ON_LEVEL);
    }

    @Test
    void oddsAddUpOverEveryCombinationOfSteps() {
        SplittableRandom random = new SplittableRandom(9);
        double[][] chances = new double[4][5];
        int[] expected = {3, 4, 3, 5};
        for (double[] own : chances) {
            double sum = 0;
            for (int s = 0; s < 5; s++) {
                own[s] = random.nextDouble();
                sum += own[s];
            }
            for (int s = 0; s < 5; s++) {
                own[s] /= sum;
            }
        }
        double[] odds = new double[3];
        for (int code = 0; code < 625; code++) {
            int[] steps = {code % 5 + 1, code / 5 % 5 + 1, code / 25 % 5 + 1, code / 125 + 1};
            double chance = 1;
            for (int i = 0; i < 4; i++) {
                chance *= chances[i][steps[i] - 1];
            }
            odds[TierOdds.of(steps, expected).ordinal()] += chance;
        }
        assertThat(TierOdds.of(chances, expected)).containsExactly(odds, within(1e-12));
    }
}
