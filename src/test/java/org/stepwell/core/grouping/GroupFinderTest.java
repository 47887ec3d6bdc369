package org.stepwell.core.grouping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.stepwell.core.grouping.Classes.child;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.grouping.Contradiction.Kind;
import org.stepwell.core.tier.Tier;

class GroupFinderTest {
    private static final List<GroupChild> SIX = Stream.of("A", "B", "C", "D", "E", "F")
            .map(id -> child(id, Tier.ON_LEVEL, "T05", 3, null)).toList();

    private static Grouping groups(GroupingTask task) {
        return ((Proposal.Groups) GroupFinder.propose(task)).grouping();
    }

    private static Contradiction only(Wish... wishes) {
        return only(GroupingTask.of(SIX, 2, List.of(wishes)));
    }

    private static Contradiction only(GroupingTask task) {
        List<Contradiction> all = ((Proposal.Impossible) GroupFinder.propose(task)).contradictions();
        assertThat(all).hasSize(1);
        return all.getFirst();
    }

    private static Wish apart(String one, String other) {
        return new Wish.Apart(one, other);
    }

    private static Wish together(String one, String other) {
        return new Wish.Together(one, other);
    }

    /** By arithmetic: the quotient rounded up as often as there is a remainder, else rounded down. */
    @ParameterizedTest
    @CsvSource({"17,4,'5,4,4,4'", "18,4,'5,5,4,4'", "21,5,'5,4,4,4,4'", "22,5,'5,5,4,4,4'", "23,5,'5,5,5,4,4'",
        "24,5,'5,5,5,5,4'", "25,5,'5,5,5,5,5'", "26,6,'5,5,4,4,4,4'", "26,5,'6,5,5,5,5'", "20,5,'4,4,4,4,4'",
        "40,8,'5,5,5,5,5,5,5,5'", "1,1,'1'", "3,5,'1,1,1,0,0'", "1,5,'1,0,0,0,0'"})
    void sizesDifferByAtMostOne(int children, int groups, String sizes) {
        Grouping found = groups(GroupingTask.of(Classes.of(children, new SplittableRandom(5)), groups, List.of()));
        List<Integer> counted = new ArrayList<>();
        for (int g = 1; g <= groups; g++) {
            counted.add(java.util.Collections.frequency(found.groupOf().values(), g));
        }
        counted.sort(Comparator.reverseOrder());
        assertThat(counted).hasToString("[" + sizes.replace(",", ", ") + "]");
    }

    @Test
    void childrenOnOneSkillAndNearStepsSitTogether() {
        List<GroupChild> children = List.of(
                child("a", Tier.SUPPORT, "T05", 1.5, null), child("b", Tier.EXTENSION, "T08", 4.5, null),
                child("c", Tier.SUPPORT, "T05", 2, null), child("d", Tier.EXTENSION, "T08", 5, null),
                child("e", Tier.ON_LEVEL, "T06", 3, null), child("f", Tier.ON_LEVEL, "T06", 3.5, null));
        assertThat(groups(GroupingTask.of(children, 3, List.of())).groupOf())
                .hasToString("{a=1, b=2, c=1, d=2, e=3, f=3}");
    }

    @Test
    void whereNeedsAreEqualCompanyChanges() {
        List<GroupChild> children = List.of(child("a", Tier.SUPPORT, "T05", 2, "x"),
                child("b", Tier.SUPPORT, "T05", 2, "x"), child("c", Tier.SUPPORT, "T05", 2, "y"),
                child("d", Tier.SUPPORT, "T05", 2, "y"));
        Grouping found = groups(GroupingTask.of(children, 2, List.of()));
        assertThat(found.groupOf().get("a")).isNotEqualTo(found.groupOf().get("b"));
        assertThat(found.groupOf().get("c")).isNotEqualTo(found.groupOf().get("d"));
    }

    @Test
    void theLongerACompanyStaysTheMoreItTakesToKeepIt() {
        for (int stays : List.of(1, 10)) {
            List<GroupChild> children = new ArrayList<>();
            for (String id : List.of("a", "b", "c", "d")) {
                boolean first = id.compareTo("c") < 0;
                children.add(new GroupChild(id, Tier.SUPPORT, "T05", first ? 2.0 : 2.6, first ? "x" : "y", stays));
            }
            Grouping found = groups(GroupingTask.of(children, 2, List.of()));
            assertThat(found.groupOf().get("a").equals(found.groupOf().get("b"))).isEqualTo(stays == 1);
        }
    }

    @Test
    void mixedTablesKnowNoTierAndJoinDifferentSteps() {
        List<GroupChild> children = List.of(child("a", Tier.SUPPORT, "T05", 1, null),
                child("b", Tier.SUPPORT, "T05", 1, null), child("c", Tier.EXTENSION, "T05", 5, null),
                child("d", Tier.EXTENSION, "T05", 5, null));
        Grouping found = groups(Classes.task(children, 2, List.of(), Aim.MIXED));
        assertThat(found.groupOf().get("a")).isNotEqualTo(found.groupOf().get("b"));
        assertThat(Aim.MIXED.price(children.get(0), children.get(2)))
                .isEqualTo(Aim.MIXED.price(children.get(0), child("x", Tier.SUPPORT, "T05", 5, null)));
    }

    @Test
    void bothTogetherAndApartIsNamed() {
        assertThat(only(apart("B", "A"), together("A", "B")).children()).containsExactly("A", "B");
        Contradiction through = only(apart("A", "C"), together("A", "B"), together("B", "C"), apart("D", "E"));
        assertThat(through.kind()).isEqualTo(Kind.BOTH);
        assertThat(through.children()).containsExactly("A", "C", "B");
        assertThat(through.wishes()).containsExactly(together("A", "B"), together("B", "C"), apart("A", "C"));
    }

    @Test
    void everyPlainContradictionIsNamedAndNotOnlyTheFirst() {
        Proposal.Impossible not = (Proposal.Impossible) GroupFinder.propose(GroupingTask.of(SIX, 2,
                List.of(apart("A", "B"), together("A", "B"), apart("C", "D"), together("D", "C"))));
        assertThat(not.contradictions()).extracting(Contradiction::children)
                .containsExactly(List.of("A", "B"), List.of("C", "D"));
    }

    @Test
    void aChainLongerThanAGroupIsNamed() {
        Contradiction chain = only(together("A", "B"), together("C", "D"), together("B", "C"));
        assertThat(chain.kind()).isEqualTo(Kind.CHAIN_TOO_LONG);
        assertThat(chain.children()).containsExactly("A", "B", "C", "D");
        assertThat(chain.room()).isEqualTo(3);
    }

    @Test
    void moreMutuallyApartThanGroupsIsNamed() {
        Contradiction clique = only(apart("A", "B"), apart("B", "C"), apart("C", "A"), apart("A", "F"));
        assertThat(clique.kind()).isEqualTo(Kind.TOO_MANY_APART);
        assertThat(clique.children()).containsExactly("A", "B", "C");
    }

    @Test
    void wishesThatFitOneByOneAndNotAllAreNamedAsASmallestSet() {
        List<GroupChild> five = SIX.subList(0, 5);
        Contradiction odd = only(GroupingTask.of(five, 2, List.of(apart("A", "B"), apart("B", "C"), apart("C", "D"),
                apart("D", "E"), apart("E", "A"))));
        assertThat(odd.kind()).isEqualTo(Kind.NOT_ALL);
        assertThat(odd.wishes()).hasSize(5);
        Contradiction full = only(together("A", "B"), together("C", "D"), together("E", "F"), together("B", "A"));
        assertThat(full.kind()).isEqualTo(Kind.NOT_ALL);
        assertThat(full.wishes()).containsExactly(together("A", "B"), together("C", "D"), together("E", "F"));
    }

    @Test
    void placesThatCannotBeAreNamed() {
        assertThat(only(new Wish.InGroup("A", 3)).kind()).isEqualTo(Kind.NO_SUCH_GROUP);
        assertThat(only(new Wish.InGroup("A", 1), new Wish.InGroup("A", 2)).kind()).isEqualTo(Kind.TWO_PLACES);
        assertThat(only(new Wish.InGroup("A", 1), together("A", "B"), new Wish.InGroup("B", 2)).children())
                .containsExactly("A", "B");
        assertThat(only(new Wish.InGroup("A", 1), new Wish.InGroup("B", 1), apart("A", "B")).kind())
                .isEqualTo(Kind.APART_IN_ONE_PLACE);
        assertThat(only(new Wish.AwayAt("A", 1), new Wish.InGroup("A", 1)).kind()).isEqualTo(Kind.NO_PLACE);
        assertThat(only(new Wish.WithSecondAdult("A")).kind()).isEqualTo(Kind.NO_PLACE);
        assertThat(only(Stream.of("A", "B", "C", "D").map(c -> new Wish.InGroup(c, 2)).toArray(Wish[]::new)).kind())
                .isEqualTo(Kind.GROUP_TOO_FULL);
        assertThat(only(apart("A", "Q")).children()).containsExactly("Q");
        assertThat(only(apart("A", "A")).kind()).isEqualTo(Kind.APART_FROM_ITSELF);
    }

    @Test
    void placesTimesAndTheSecondAdultAreKept() {
        GroupingTask task = Classes.task(Classes.of(22, new SplittableRandom(1)), 5, List.of(
                new Wish.InGroup("c03", 4), new Wish.AwayAt("c04", 1), new Wish.AwayAt("c04", 2),
                new Wish.AwayAt("c04", 3), new Wish.AwayAt("c04", 4), new Wish.WithSecondAdult("c05"),
                new Wish.AwayAt("c05", 1)), Aim.FOCUS);
        assertThat(groups(task).groupOf()).containsEntry("c03", 4).containsEntry("c04", 5).containsEntry("c05", 2);
    }

    @Test
    void aTaskWithoutChildrenOrWithATwinIsRefused() {
        assertThatThrownBy(() -> GroupingTask.of(List.of(), 2, List.of())).hasMessageContaining("not 0");
        assertThatThrownBy(() -> GroupingTask.of(List.of(SIX.get(0), SIX.get(0)), 2, List.of()))
                .hasMessageContaining("twice");
    }

    @Test
    void aScoreNamesWhatAChangeByHandBreaks() {
        GroupingTask task = GroupingTask.of(SIX, 2, List.of(apart("A", "B")));
        GroupScore score = GroupScore.of(task,
                java.util.Map.of("A", 1, "B", 1, "C", 1, "D", 1, "E", 2, "F", 2));
        assertThat(score.broken()).containsExactly(apart("A", "B"));
        assertThat(score.even()).isFalse();
        assertThat(SeatReason.of(task, java.util.Map.of("A", 1, "B", 1))).allMatch(r -> r.kept().isEmpty());
        assertThat(SeatReason.of(task, java.util.Map.of("A", 1, "B", 2)))
                .allMatch(r -> r.kept().contains(SeatReason.Kept.COMPANY));
        assertThat(GroupScore.of(task, groups(task).groupOf()).price()).isEqualTo(groups(task).price());
    }
}
