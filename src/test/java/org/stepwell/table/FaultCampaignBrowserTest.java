package org.stepwell.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stepwell.table.FaultPlan.Look;
import org.stepwell.table.FaultPlan.Step;
import org.stepwell.table.FaultPlan.Strike;

/** A short campaign, and the proof that a campaign finds what it is for. */
class FaultCampaignBrowserTest extends OnAFaultyDay {
    private static final long SEED = 20_260_302;
    @TempDir
    private Path profile;

    private FaultCampaign.Result run(FaultPlan plan) {
        try (FaultCampaign campaign = new FaultCampaign(day, profile, promises)) {
            return campaign.run(plan, struck -> { });
        }
    }

    /** A plan of the fault that a mistake needs to do its harm, and of nothing else. */
    private static FaultPlan only(Strike strike) {
        Step step = new Step(strike, List.of(new Look(0, 3), new Look(1, 4)), List.of(), 0.5, true);
        return new FaultPlan(0, List.of(step, step));
    }

    @Test
    void losesAndDoublesNothingInAShortCampaign() {
        FaultCampaign.Result result = run(FaultPlan.of(SEED, 40));
        assertThat(result.faults()).isEqualTo(40);
        assertThat(result.looks()).isGreaterThan(40);
        assertThat(result.clean()).as("seed " + SEED + ": " + result).isTrue();
    }

    @Test
    void findsAPageThatForgetsALookBeforeItIsAcknowledged() {
        day.proxy().change("/table/js/server.js", PlantedBug.REMOVES_BEFORE_ACKNOWLEDGED.inModule());
        FaultCampaign.Result result = run(only(Strike.CUT_DURING));
        assertThat(result.verdict().lost()).isNotEmpty();
        assertThat(result.overstated()).isNotEmpty();
    }

    @Test
    void findsAPageThatSendsALookAgainUnderANewId() {
        day.proxy().change("/table/js/server.js", PlantedBug.SENDS_AGAIN_UNDER_A_NEW_ID.inModule());
        FaultCampaign.Result result = run(only(Strike.LOST_AFTER_COMMIT));
        assertThat(result.verdict().doubled()).isNotEmpty();
        assertThat(result.verdict().lost()).isEmpty();
    }
}
