package org.stepwell.table;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.stepwell.table.FaultPlan.Strike;

class FaultPlanTest {
    @Test
    void theSameSeedGivesTheSameCampaign() {
        assertThat(FaultPlan.of(7, 500)).isEqualTo(FaultPlan.of(7, 500));
        assertThat(FaultPlan.of(7, 500).steps()).isNotEqualTo(FaultPlan.of(8, 500).steps());
    }

    @Test
    void aShorterCampaignIsTheBeginningOfALongerOne() {
        assertThat(FaultPlan.of(7, 500).steps()).startsWith(FaultPlan.of(7, 40).steps().toArray(FaultPlan.Step[]::new));
    }

    @Test
    void everyFaultStrikesAndTheServerDiesInFewerThanOneOfTwenty() {
        for (long seed = 1; seed <= 20; seed++) {
            FaultPlan plan = FaultPlan.of(seed, 2000);
            assertThat(plan.counts()).as("seed " + seed).containsKeys(Strike.values());
            assertThat(plan.counts().get(Strike.SERVER_KILLED)).as("seed " + seed).isLessThanOrEqualTo(100);
        }
    }
}
