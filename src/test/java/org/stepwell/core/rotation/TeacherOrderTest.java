package org.stepwell.core.rotation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.stepwell.core.rotation.MinutesLedger.Line;
import org.stepwell.core.rotation.TeacherOrder.Group;
import org.stepwell.core.rotation.TeacherOrder.Place;
import org.stepwell.core.rotation.TeacherOrder.Why;

class TeacherOrderTest {
    private static final LocalTime NINE = LocalTime.of(9, 0);

    private static Group group(int number, int wished, int had, double owed, double minutes) {
        return new Group(number, wished, had, owed, minutes);
    }

    private static List<Integer> numbers(List<Place> places) {
        return places.stream().map(Place::group).toList();
    }

    @Test
    void whoIsOwedComesFirst() {
        List<Place> order = TeacherOrder.of(List.of(group(1, 5, 0, 0, 40), group(2, 5, 0, 10, 30),
                group(3, 5, 0, 4, 36)), 5, 5, 0);
        assertThat(numbers(order)).containsExactly(2, 3, 1);
        assertThat(order).extracting(Place::why).containsExactly(Why.OWED, Why.OWED, Why.IN_TURN);
    }

    @Test
    void aGroupThatComesTwiceAWeekIsNotLeftForTheWeekend() {
        List<Group> thursday = List.of(group(1, 5, 3, 0, 30), group(2, 2, 0, 0, 10), group(3, 2, 2, 0, 20));
        List<Place> order = TeacherOrder.of(thursday, 2, 5, 0);
        assertThat(numbers(order).getLast()).isEqualTo(3);
        assertThat(order.getLast().why()).isEqualTo(Why.HAD_ITS_VISITS);
        assertThat(order).filteredOn(p -> p.group() == 2).extracting(Place::why).containsExactly(Why.LAST_CHANCE);
        assertThat(numbers(TeacherOrder.of(List.of(group(1, 2, 0, 0, 0), group(2, 5, 0, 0, 0)), 5, 5, 0)))
                .as("on Monday the daily group goes before the other").containsExactly(2, 1);
    }

    /** Equal groups over twenty days: the first place goes round, so nobody is always the one that is cut short. */
    @Test
    void theBeginningGoesRound() {
        Map<Integer, Integer> first = new HashMap<>();
        for (int day = 0; day < 20; day++) {
            List<Group> equal = IntStream.rangeClosed(1, 5).mapToObj(n -> group(n, 5, 0, 0, 50)).toList();
            first.merge(TeacherOrder.of(equal, 5, 5, day).getFirst().group(), 1, Integer::sum);
        }
        assertThat(first).hasSize(5).allSatisfy((group, times) -> assertThat(times).isEqualTo(4));
    }

    /** Three rotations for five groups: after four weeks nobody is more than one visit ahead of anybody else. */
    @Test
    void shortBlocksStayFairOverAMonth() {
        int[] minutes = new int[5];
        for (int day = 0; day < 20; day++) {
            int weekday = day % 5;
            List<Group> groups = new ArrayList<>();
            for (int n = 1; n <= 5; n++) {
                groups.add(group(n, 5, 0, 0, minutes[n - 1]));
            }
            DayPlan plan = Rotations.plan(RotationsPropertyTest.pattern(5, 10, 1), 3,
                    numbers(TeacherOrder.of(groups, 5 - weekday, 5, day)), day, NINE);
            for (int n = 1; n <= 5; n++) {
                minutes[n - 1] += plan.teacherMinutes(n);
            }
        }
        assertThat(IntStream.of(minutes).sum()).isEqualTo(600);
        assertThat(IntStream.of(minutes).max().orElseThrow() - IntStream.of(minutes).min().orElseThrow())
                .isLessThanOrEqualTo(10);
    }

    @Test
    void theLedgerTellsWhatWasPlannedGivenAndMissed() {
        DayPlan planned = Rotations.plan(RotationsPropertyTest.pattern(5, 10, 0), 3, List.of(1, 2, 3, 4, 5), 0, NINE);
        DayPlan held = LostTime.DROP.after(planned, 0, NINE, 10, Map.of());
        Map<String, Integer> groupOf = Map.of("a", 1, "b", 1, "c", 3, "d", 4);
        SortedMap<String, Line> lines = MinutesLedger.of(List.of(
                new MinutesLedger.Day(LocalDate.of(2026, 3, 2), planned, held, groupOf, Set.of("b")),
                new MinutesLedger.Day(LocalDate.of(2026, 3, 3), planned, planned, groupOf, Set.of())));
        assertThat(lines.get("a")).isEqualTo(new Line(20, 20, 0));
        assertThat(lines.get("b")).isEqualTo(new Line(20, 10, 10));
        assertThat(lines.get("c")).isEqualTo(new Line(20, 10, 0));
        assertThat(lines.get("c").owed()).isEqualTo(10);
        assertThat(lines.get("b").owed()).as("away is not owed by the block").isZero();
        assertThat(lines.get("d").planned()).isZero();
        assertThat(Group.of(3, 5, 0, List.of("c", "x"), lines).owed()).isEqualTo(10);
    }
}
