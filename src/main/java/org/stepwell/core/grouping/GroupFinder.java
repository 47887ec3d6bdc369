package org.stepwell.core.grouping;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Finds good groups. Starts from several placements that keep every wish, then looks again and again at two and three
 * groups at a time for the best way to share out their children among them, until no two groups and hardly any three
 * can be bettered; small classes are searched to the end. Work is counted in choices, not in time.
 */
public final class GroupFinder {
    private static final long CHOICES_TO_FIND = 40_000;
    private static final long CHOICES_FOR_TWO = 1_500;
    private static final long CHOICES_FOR_THREE = 1_500;
    private static final long CHOICES_TO_PROVE = 6_000;
    private static final int SHUFFLED_STARTS = 4;
    private static final int STARTS_LOOKED_AT_CLOSELY = 3;
    private static final int MOST_TRIPLES = 400;
    private static final Comparator<GroupChild> BY_NEED = Comparator
            .comparing(GroupChild::focus, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(GroupChild::estimate, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(GroupChild::tier, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(GroupChild::id);
    private static final Comparator<GroupChild> BY_STEP = Comparator
            .comparing(GroupChild::tier, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(GroupChild::estimate, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(GroupChild::focus, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(GroupChild::id);

    private final Blocks blocks;
    private final PlacementSearch search;

    private GroupFinder(Blocks blocks) {
        this.blocks = blocks;
        this.search = new PlacementSearch(blocks);
    }

    /**
     * Groups that keep every wish, or the wishes that cannot be kept.
     *
     * @return the same answer for the same task, whatever the order of its children and wishes
     */
    public static Proposal propose(GroupingTask task) {
        List<Contradiction> plain = PlainContradictions.of(task);
        if (!plain.isEmpty()) {
            return new Proposal.Impossible(plain);
        }
        GroupFinder finder = new GroupFinder(new Blocks(task));
        List<int[]> starts = finder.starts();
        if (starts.isEmpty()) {
            return new Proposal.Impossible(List.of(HiddenContradiction.of(task)));
        }
        return new Proposal.Groups(finder.best(starts));
    }

    /** Whether some placement keeps all wishes: yes, no, or none found within the choices. */
    static PlacementSearch.Found anyPlacement(GroupingTask task) {
        GroupFinder finder = new GroupFinder(new Blocks(task));
        return finder.search.any(finder.order(BY_NEED), CHOICES_TO_FIND);
    }

    private int[] order(Comparator<GroupChild> by) {
        return IntStream.range(0, blocks.count()).boxed()
                .sorted(Comparator.comparing((Integer b) -> blocks.members.get(b).getFirst(), by))
                .mapToInt(Integer::intValue).toArray();
    }

    private List<int[]> starts() {
        List<int[]> orders = new ArrayList<>(List.of(order(BY_NEED), order(BY_STEP)));
        Random random = new Random(blocks.count());
        for (int i = 0; i < SHUFFLED_STARTS; i++) {
            List<Integer> shuffled = new ArrayList<>(IntStream.range(0, blocks.count()).boxed().toList());
            java.util.Collections.shuffle(shuffled, random);
            orders.add(shuffled.stream().mapToInt(Integer::intValue).toArray());
        }
        List<int[]> starts = new ArrayList<>();
        for (int[] order : orders) {
            PlacementSearch.Found found = search.any(order, CHOICES_TO_FIND);
            if (found.place() != null) {
                starts.add(found.place());
            } else if (found.complete()) {
                return List.of();
            }
        }
        return starts;
    }

    private Grouping best(List<int[]> starts) {
        List<int[]> placed = new ArrayList<>();
        for (int[] start : starts) {
            placed.add(overPairs(new Swaps(blocks).better(start)));
        }
        placed.sort(Comparator.comparingLong(blocks::price));
        int[] best = placed.getFirst();
        for (int[] one : placed.subList(0, Math.min(STARTS_LOOKED_AT_CLOSELY, placed.size()))) {
            int[] closer = overTriples(one);
            best = blocks.price(closer) < blocks.price(best) ? closer : best;
        }
        PlacementSearch.Found last = search.better(best, IntStream.range(0, blocks.task.groups()).toArray(),
                CHOICES_TO_PROVE);
        return blocks.grouping(last.place() == null ? best : last.place(), last.complete());
    }

    private int[] overPairs(int[] start) {
        int[] place = start;
        boolean bettered = true;
        while (bettered) {
            bettered = false;
            for (int one = 0; one < blocks.task.groups(); one++) {
                for (int other = one + 1; other < blocks.task.groups(); other++) {
                    PlacementSearch.Found found = search.better(place, new int[] {one, other}, CHOICES_FOR_TWO);
                    if (found.place() != null) {
                        place = found.place();
                        bettered = true;
                    }
                }
            }
        }
        return place;
    }

    private int[] overTriples(int[] start) {
        int[] place = start;
        List<int[]> triples = triples();
        int sinceBettered = 0;
        for (int i = 0; sinceBettered < triples.size(); i = (i + 1) % triples.size()) {
            PlacementSearch.Found found = search.better(place, triples.get(i), CHOICES_FOR_THREE);
            sinceBettered++;
            if (found.place() != null) {
                place = overPairs(found.place());
                sinceBettered = 0;
            }
        }
        return place;
    }

    private List<int[]> triples() {
        List<int[]> triples = new ArrayList<>();
        int groups = blocks.task.groups();
        for (int a = 0; a < groups; a++) {
            for (int b = a + 1; b < groups; b++) {
                for (int c = b + 1; c < groups; c++) {
                    triples.add(new int[] {a, b, c});
                }
            }
        }
        int step = (triples.size() + MOST_TRIPLES - 1) / MOST_TRIPLES;
        return step <= 1 ? triples : IntStream.range(0, triples.size()).filter(i -> i % step == 0)
                .mapToObj(triples::get).toList();
    }
}
