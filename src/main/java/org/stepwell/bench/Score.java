package org.stepwell.bench;

import java.util.List;
import org.stepwell.core.tier.Tier;

/** How one decider did over classrooms of one family. */
final class Score {
    private static final int BANDS = 10;

    private final long[][] confusion = new long[3][3];
    private long children;
    private long moves;
    private final long[] suggested = new long[BANDS];
    private final long[] right = new long[BANDS];
    private long clear;
    private long clearRight;
    private long needing;
    private long weeksWaited;

    /** Takes in one child: one call and one truth per review, a week apart. */
    void add(List<Decider.Call> calls, List<Tier> truth) {
        children++;
        Tier before = Tier.ON_LEVEL;
        for (int r = 0; r < calls.size(); r++) {
            Decider.Call call = calls.get(r);
            confusion[truth.get(r).ordinal()][call.tier().ordinal()]++;
            if (call.tier() != before) {
                moves++;
                count(call, call.tier() == truth.get(r));
            }
            before = call.tier();
        }
        waiting(calls, truth);
    }

    private void count(Decider.Call call, boolean isRight) {
        int band = Math.min(BANDS - 1, (int) (call.chance() * BANDS));
        suggested[band]++;
        right[band] += isRight ? 1 : 0;
        if (call.chance() >= 0.75 && call.chance() <= 0.85) {
            clear++;
            clearRight += isRight ? 1 : 0;
        }
    }

    /** From the first review at which a child needs support to the first from then on with support in force. */
    private void waiting(List<Decider.Call> calls, List<Tier> truth) {
        int from = truth.indexOf(Tier.SUPPORT);
        if (from < 0) {
            return;
        }
        needing++;
        int got = from;
        while (got < calls.size() && calls.get(got).tier() != Tier.SUPPORT) {
            got++;
        }
        weeksWaited += got - from;
    }

    /** Mean of the recalls of those tiers that occur. */
    double balancedAccuracy() {
        double sum = 0;
        int occurring = 0;
        for (Tier tier : Tier.values()) {
            if (total(tier) > 0) {
                sum += recall(tier);
                occurring++;
            }
        }
        return sum / occurring;
    }

    /** Share of the reviews with this true tier at which it was in force; NaN when it never occurs. */
    double recall(Tier tier) {
        return (double) confusion[tier.ordinal()][tier.ordinal()] / total(tier);
    }

    private long total(Tier tier) {
        long[] row = confusion[tier.ordinal()];
        return row[0] + row[1] + row[2];
    }

    /** Share of all reviews at which support stood for extension or the reverse. */
    double opposite() {
        long all = total(Tier.SUPPORT) + total(Tier.ON_LEVEL) + total(Tier.EXTENSION);
        return (double) (confusion[0][2] + confusion[2][0]) / all;
    }

    double movesPerChild() {
        return (double) moves / children;
    }

    /** Weeks until a child who needs support gets it; a child who never does counts up to the last review. */
    double weeksToSupport() {
        return (double) weeksWaited / needing;
    }

    /** Share right of the moves suggested at a chance of 0.75-0.85; NaN when there were none. */
    double rightWhenClear() {
        return (double) clearRight / clear;
    }

    long clearMoves() {
        return clear;
    }

    /** Moves suggested in each tenth of the chance. */
    long[] suggested() {
        return suggested.clone();
    }

    /** Those of them that were right. */
    long[] right() {
        return right.clone();
    }
}
