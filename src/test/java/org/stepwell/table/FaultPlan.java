package org.stepwell.table;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * The faults of a campaign with what is tapped around each: all of it follows from the seed.
 *
 * @param seed the number it all follows from
 * @param steps one fault each, in order
 */
record FaultPlan(long seed, List<Step> steps) {
    /** What befalls the Table. The number is how often of 200. */
    enum Strike {
        NETWORK_GONE(16),
        CUT_BEFORE(12),
        CUT_DURING(20),
        LOST_AFTER_COMMIT(20),
        TRUNCATED(20),
        HANG(12),
        LATE(10),
        STATUS_500(8),
        STATUS_503(8),
        STATUS_401(8),
        STATUS_403(8),
        STATUS_413(8),
        PORTAL(10),
        TAB_CLOSED(8),
        RELOADED(6),
        RELOADED_OFFLINE(6),
        TWO_TABS(5),
        SESSION_LOST(5),
        OTHER_ADULT(2),
        BROWSER_KILLED(4),
        POSTGRES_KILLED(2),
        SERVER_KILLED(2);

        private final int weight;

        Strike(int weight) {
            this.weight = weight;
        }
    }

    /** One look to tap: place of the child among those at the table, and the step shown. */
    record Look(int child, int step) {}

    /**
     * One fault.
     *
     * @param before looks tapped before it strikes, at least one
     * @param during looks tapped while it lasts
     * @param at where a cut falls, as a share of the bytes
     * @param drains whether everything is sent before the next fault strikes, or the next one strikes on top
     */
    record Step(Strike strike, List<Look> before, List<Look> during, double at, boolean drains) {}

    /** @param count faults, 1 or more */
    static FaultPlan of(long seed, int count) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        int all = 0;
        for (Strike strike : Strike.values()) {
            all += strike.weight;
        }
        List<Step> steps = new ArrayList<>();
        for (int n = 0; n < count; n++) {
            int draw = random.nextInt(all);
            int place = 0;
            while (draw >= Strike.values()[place].weight) {
                draw -= Strike.values()[place].weight;
                place++;
            }
            steps.add(new Step(Strike.values()[place], looks(random, 1 + random.nextInt(2)),
                    looks(random, random.nextInt(2)), random.nextDouble(), random.nextInt(3) > 0));
        }
        return new FaultPlan(seed, List.copyOf(steps));
    }

    private static List<Look> looks(RandomGenerator random, int count) {
        List<Look> looks = new ArrayList<>();
        for (int n = 0; n < count; n++) {
            looks.add(new Look(random.nextInt(Tablet.CHILDREN.size()), 1 + random.nextInt(5)));
        }
        return List.copyOf(looks);
    }

    /** How often each fault strikes. */
    Map<Strike, Integer> counts() {
        Map<Strike, Integer> counts = new EnumMap<>(Strike.class);
        steps.forEach(step -> counts.merge(step.strike(), 1, Integer::sum));
        return counts;
    }
}
