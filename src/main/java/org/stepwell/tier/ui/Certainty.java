package org.stepwell.tier.ui;

import java.util.Locale;
import org.stepwell.core.evidence.SkillEstimate;

/** How sure a shown step is, in three words; the bounds are the house's own choice, said in the map's legend. */
enum Certainty {
    /** At least 8 of 10 cases are at that step or above, and the next one is not close. */
    CLEAR,
    /** At least 65 of 100 are. */
    LIKELY,
    /** Anything less. */
    OPEN;

    private static final double CLEAR_FROM = 0.8;
    private static final double LIKELY_FROM = 0.65;
    private static final double NEXT_IS_CLOSE = 0.35;

    static Certainty of(SkillEstimate estimate) {
        double chance = estimate.atLeast(estimate.step());
        boolean close = estimate.step() < 5 && estimate.atLeast(estimate.step() + 1) > NEXT_IS_CLOSE;
        if (chance >= CLEAR_FROM && !close) {
            return CLEAR;
        }
        return chance >= LIKELY_FROM ? LIKELY : OPEN;
    }

    /** Name of its text. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
