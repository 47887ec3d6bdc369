package org.stepwell.core.grouping;

import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.Tier;

/**
 * What makes good company. The price of two children at one table is a whole number, the lower the better; a grouping
 * costs the sum over all pairs that sit together. The prices are our own: one other skill at the table weighs as much
 * as one and a half steps, a step more than a place between kinds of support, because the adult needs one task for all.
 */
public enum Aim {
    /** One skill and near steps at each table; company changes when little else speaks against it. */
    FOCUS,
    /** As {@link #FOCUS}, but children who sat together last time are parted where a table still has one task. */
    NEW_COMPANY,
    /** Different skills and steps at each table, as in the first weeks; nobody sits with last time's company. */
    MIXED;

    private static final int OTHER_SKILL = 12;
    private static final int PER_STEP = 8;
    private static final int PER_SUPPORT = 5;
    private static final int LONGEST_STAY = 10;
    private static final int PER_STAY_NEW = 6;
    private static final int PER_STAY_MIXED = 12;

    /** Price of the two at one table, 0 or more; the same whichever comes first. */
    public int price(GroupChild one, GroupChild other) {
        int skill = differ(one.focus(), other.focus()) ? OTHER_SKILL : 0;
        int step = one.estimate() == null || other.estimate() == null ? 0
                : (int) StrictMath.rint(PER_STEP * StrictMath.abs(one.estimate() - other.estimate()));
        int support = between(one.tier(), other.tier()) * PER_SUPPORT;
        int stay = one.satWith(other) ? StrictMath.clamp(StrictMath.min(one.stays(), other.stays()), 1, LONGEST_STAY)
                : 0;
        return switch (this) {
            case FOCUS -> skill + step + support + stay;
            case NEW_COMPANY -> skill + step + support + PER_STAY_NEW * stay;
            case MIXED -> alike(one, other, skill, step) + PER_STAY_MIXED * stay;
        };
    }

    /** How much the two have in common; the kind of support plays no part, so that mixed tables know none. */
    private static int alike(GroupChild one, GroupChild other, int skill, int step) {
        boolean skills = one.focus() != null && other.focus() != null;
        boolean steps = one.estimate() != null && other.estimate() != null;
        return (skills ? OTHER_SKILL - skill : 0) + (steps ? (int) (PER_STEP * GroupChild.HIGHEST) - step : 0);
    }

    private static boolean differ(@Nullable String one, @Nullable String other) {
        return one != null && other != null && !one.equals(other);
    }

    private static int between(@Nullable Tier one, @Nullable Tier other) {
        return one == null || other == null ? 0 : StrictMath.abs(one.ordinal() - other.ordinal());
    }
}
