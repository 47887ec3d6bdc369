package org.stepwell.core.grouping;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

class GroupFinderPropertyTest {
    private static final long SEED = 20260302;

    @Test
    void anyRosterAndAnyWishesGiveValidGroupsOrANamedContradiction() {
        int possible = 0;
        int impossible = 0;
        System.out.println("classes from seed " + SEED);
        for (int round = 0; round < 70; round++) {
            RandomGenerator random = new SplittableRandom(SEED + round);
            int count = 1 + random.nextInt(40);
            int groups = 1 + random.nextInt(9);
            List<Wish> wishes = Classes.wishes(count, groups, random.nextInt(14), random);
            GroupingTask task = Classes.task(Classes.of(count, random), groups, wishes, Aim.values()[round % 3]);
            String name = "seed " + (SEED + round);
            switch (GroupFinder.propose(task)) {
                case Proposal.Groups found -> {
                    valid(task, found.grouping(), name);
                    possible++;
                }
                case Proposal.Impossible not -> {
                    not.contradictions().forEach(c -> named(task, c, name));
                    assertThat(not.contradictions()).as(name).isNotEmpty();
                    impossible++;
                }
            }
        }
        assertThat(possible).isGreaterThan(15);
        assertThat(impossible).isGreaterThan(15);
    }

    private static void valid(GroupingTask task, Grouping grouping, String name) {
        assertThat(grouping.groupOf().keySet()).as(name)
                .containsExactlyInAnyOrderElementsOf(task.children().stream().map(GroupChild::id).toList());
        int[] sizes = new int[task.groups()];
        grouping.groupOf().values().forEach(g -> sizes[g - 1]++);
        for (int size : sizes) {
            assertThat(size).as(name).isBetween(task.children().size() / task.groups(),
                    (task.children().size() + task.groups() - 1) / task.groups());
        }
        assertThat(task.wishes()).as(name).allMatch(w -> Classes.keeps(w, grouping.groupOf()));
        assertThat(grouping.price()).as(name).isEqualTo(Classes.price(task, grouping.groupOf()));
    }

    private static void named(GroupingTask task, Contradiction contradiction, String name) {
        assertThat(contradiction.children()).as(name).isNotEmpty();
        assertThat(contradiction.wishes()).as(name).isNotEmpty();
        assertThat(contradiction.wishes().stream().flatMap(w -> w.children().stream()))
                .as(name).containsAll(contradiction.children());
        assertThat(GroupFinder.propose(task.with(contradiction.wishes()))).as(name)
                .isInstanceOf(Proposal.Impossible.class);
        assertThat(contradiction.kind()).as(name).isNotEqualTo(Contradiction.Kind.NONE_FOUND);
        for (Wish one : contradiction.wishes()) {
            if (contradiction.kind() == Contradiction.Kind.NOT_ALL) {
                assertThat(GroupFinder.propose(task.with(contradiction.wishes().stream().filter(w -> w != one)
                        .toList()))).as(name + " without " + one).isInstanceOf(Proposal.Groups.class);
            }
        }
    }

    @Test
    void smallClassesGetTheBestOfAllGroupsOrAreTrulyImpossible() {
        for (int round = 0; round < 120; round++) {
            RandomGenerator random = new SplittableRandom(SEED * 3 + round);
            int count = 1 + random.nextInt(8);
            int groups = 1 + random.nextInt(4);
            GroupingTask task = Classes.task(Classes.of(count, random), groups,
                    Classes.wishes(count, groups, random.nextInt(6), random), Aim.values()[round % 3]);
            long least = Classes.leastOfAll(task);
            Proposal proposal = GroupFinder.propose(task);
            String name = "seed " + (SEED * 3 + round);
            if (least < 0) {
                assertThat(proposal).as(name).isInstanceOf(Proposal.Impossible.class);
            } else {
                assertThat(proposal).as(name).isInstanceOfSatisfying(Proposal.Groups.class, found -> {
                    assertThat(found.grouping().price()).as(name).isEqualTo(least);
                    assertThat(found.grouping().proven()).as(name).isTrue();
                });
            }
        }
    }

    /** From whatever start, so that the bound alone decides what is left out. */
    @Test
    void theBoundOfTheSearchNeverLeavesTheBestOut() {
        int bettered = 0;
        for (int round = 0; round < 150; round++) {
            RandomGenerator random = new SplittableRandom(SEED * 5 + round);
            int count = 4 + random.nextInt(5);
            int groups = 2 + random.nextInt(2);
            GroupingTask task = Classes.task(Classes.of(count, random), groups,
                    Classes.wishes(count, groups, random.nextInt(3), random), Aim.values()[round % 3]);
            if (!PlainContradictions.of(task).isEmpty()) {
                continue;
            }
            int[] start = GroupFinder.anyPlacement(task).place();
            if (start != null) {
                Blocks blocks = new Blocks(task);
                PlacementSearch.Found found = new PlacementSearch(blocks).better(start,
                        java.util.stream.IntStream.range(0, groups).toArray(), 1_000_000);
                bettered += found.place() == null ? 0 : 1;
                assertThat(blocks.price(found.place() == null ? start : found.place())).as("seed " + (SEED * 5 + round))
                        .isEqualTo(Classes.leastOfAll(task));
                assertThat(found.complete()).isTrue();
            }
        }
        assertThat(bettered).isGreaterThan(30);
    }

    @Test
    void theAnswerDoesNotDependOnTheOrderOfChildrenAndWishes() {
        for (int round = 0; round < 4; round++) {
            RandomGenerator random = new SplittableRandom(SEED * 7 + round);
            List<GroupChild> children = Classes.of(18, random);
            List<Wish> wishes = Classes.wishes(18, 4, 4, random);
            Proposal first = GroupFinder.propose(Classes.task(children, 4, wishes, Aim.FOCUS));
            List<GroupChild> shuffled = new ArrayList<>(children);
            List<Wish> otherWay = new ArrayList<>(wishes.stream().map(w -> switch (w) {
                case Wish.Apart a -> new Wish.Apart(a.other(), a.one());
                case Wish.Together t -> new Wish.Together(t.other(), t.one());
                default -> w;
            }).toList());
            Collections.shuffle(shuffled, new Random(round));
            Collections.shuffle(otherWay, new Random(round));
            assertThat(GroupFinder.propose(Classes.task(shuffled, 4, otherWay, Aim.FOCUS))).isEqualTo(first);
        }
    }
}
