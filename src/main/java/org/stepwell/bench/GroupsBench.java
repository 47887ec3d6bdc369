package org.stepwell.bench;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.stepwell.core.grouping.Aim;
import org.stepwell.core.grouping.GroupChild;
import org.stepwell.core.grouping.GroupFinder;
import org.stepwell.core.grouping.Grouping;
import org.stepwell.core.grouping.GroupingTask;
import org.stepwell.core.grouping.Proposal;
import org.stepwell.core.tier.Tier;

/**
 * How long groups take to find and how far they are from the best: 25 children in five groups against the proven
 * optimum, 40 in eight against a price that none can go below.
 */
public final class GroupsBench {
    private static final int USUAL_COUNT = 3;
    private static final int ROUNDS = 60;
    private static final int LAST_GROUPS = 5;
    private static final List<String> SKILLS = List.of("T04", "T05", "T05", "T05", "T06", "T07");

    private final RandomGenerator random;
    private final int count;
    private final PrintStream out;

    private GroupsBench(long seed, int count, PrintStream out) {
        this.random = new SplittableRandom(seed);
        this.count = count;
        this.out = out;
    }

    /**
     * Runs and reports, one JSON line per measure. Prices are the same for the same seed and count on every machine,
     * times are not.
     *
     * @param seed of the classes
     * @param quick one class of each size
     * @param count classes of each size; 0 or less for the usual number
     */
    public static void run(long seed, boolean quick, int count, PrintStream out) {
        GroupsBench bench = new GroupsBench(seed, count > 0 ? count : quick ? 1 : USUAL_COUNT, out);
        GroupFinder.propose(GroupingTask.of(bench.room(ExactGroups.MOST), 5, List.of()));
        bench.rooms(25, 5, "proven optimum", price -> ExactGroups.least(price, 5));
        bench.rooms(40, 8, "proven lower bound", price -> GroupsBound.of(price, ROUNDS));
    }

    private interface Least {
        long of(int[][] price);
    }

    private void rooms(int children, int groups, String against, Least least) {
        double worst = 1;
        double longest = 0;
        for (int i = 0; i < count; i++) {
            List<GroupChild> room = room(children);
            long begun = System.nanoTime();
            Proposal proposal = GroupFinder.propose(GroupingTask.of(room, groups, List.of()));
            double seconds = (System.nanoTime() - begun) / 1e9;
            Grouping grouping = ((Proposal.Groups) proposal).grouping();
            long best = least.of(prices(room));
            double ratio = best == 0 ? grouping.price() == 0 ? 1 : Double.NaN : (double) grouping.price() / best;
            worst = Math.max(worst, ratio);
            longest = Math.max(longest, seconds);
            String name = "groups." + children + "x" + groups + "." + (i + 1) + ".";
            json(name + "price", grouping.price(), "points", against + " " + best, ratio);
            json(name + "time", seconds, "s", "limit 2 s", seconds / 2);
        }
        String name = "groups." + children + "x" + groups + ".";
        json(name + "worst_price", worst, "ratio", against, worst);
        json(name + "longest", longest, "s", "limit 2 s", longest / 2);
    }

    private List<GroupChild> room(int children) {
        List<GroupChild> room = new ArrayList<>();
        for (int i = 0; i < children; i++) {
            double step = Math.clamp(3 + random.nextGaussian(), 1, 5);
            Tier tier = step < 2.2 ? Tier.SUPPORT : step > 4.2 ? Tier.EXTENSION : Tier.ON_LEVEL;
            room.add(new GroupChild(String.format(Locale.ROOT, "c%02d", i), tier,
                    SKILLS.get(random.nextInt(SKILLS.size())), StrictMath.rint(step * 10) / 10,
                    "g" + random.nextInt(LAST_GROUPS), 1));
        }
        return room;
    }

    private static int[][] prices(List<GroupChild> room) {
        int[][] price = new int[room.size()][room.size()];
        for (int i = 0; i < price.length; i++) {
            for (int j = 0; j < price.length; j++) {
                price[i][j] = i == j ? 0 : Aim.FOCUS.price(room.get(i), room.get(j));
            }
        }
        return price;
    }

    private void json(String name, double value, String unit, String against, double ratio) {
        out.print(String.format(Locale.ROOT,
                "{\"name\":\"%s\",\"value\":%s,\"unit\":\"%s\",\"against\":\"%s\",\"ratio\":%s}\n", name,
                number(value), unit, against, number(ratio)));
    }

    private static String number(double value) {
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%.6f", value) : "null";
    }
}
