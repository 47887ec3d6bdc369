package org.stepwell.core.rotation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.DayPlan.Turn;

class RotationsPropertyTest {
    private static final LocalTime NINE = LocalTime.of(9, 0);

    static BlockPattern pattern(int stations, int minutes, int change) {
        List<Station> all = IntStream.range(0, stations).mapToObj(i -> new Station("Station " + i, "", "")).toList();
        return new BlockPattern(all, minutes, change, NINE, Map.of(DayOfWeek.MONDAY, 5), new TreeMap<>());
    }

    private static List<Integer> order(int groups, long seed) {
        List<Integer> order = new ArrayList<>(IntStream.rangeClosed(1, groups).boxed().toList());
        Collections.shuffle(order, new Random(seed));
        return order;
    }

    /** A day never puts two groups at one station, nor a group twice at one before it was at all. */
    @Test
    void noTwoMeetAndNobodyComesTwiceTooSoon() {
        Random random = new Random(20311);
        for (int stations = 2; stations <= 12; stations++) {
            for (int groups = 1; groups <= stations; groups++) {
                for (int rotations = 1; rotations <= 5; rotations++) {
                    holds(stations, rotations, order(groups, random.nextLong()), random.nextInt(40));
                }
            }
        }
    }

    private static void holds(int stations, int rotations, List<Integer> order, int shift) {
        int groups = order.size();
        DayPlan day = Rotations.plan(pattern(stations, 10, 1), rotations, order, shift, NINE);
        assertThat(day.turns()).hasSize(rotations);
        for (Turn turn : day.turns()) {
            assertThat(turn.stations()).hasSize(groups).doesNotHaveDuplicates()
                    .allMatch(station -> station >= 0 && station < stations);
        }
        for (int group = 0; group < groups; group++) {
            int own = group;
            List<Integer> way = day.turns().stream().map(t -> t.stations().get(own)).toList();
            assertThat(way.subList(0, Math.min(rotations, stations))).doesNotHaveDuplicates();
        }
        for (int turn = 0; turn < Math.min(rotations, groups); turn++) {
            assertThat(day.turns().get(turn).atTeacher()).as("the order asked for").hasValue(order.get(turn));
        }
    }

    /** A group that sits with another today has a number and no place. */
    @Test
    void aNumberThatIsMissingIsNowhere() {
        DayPlan day = Rotations.plan(pattern(5, 10, 0), 4, List.of(5, 1, 4, 2), 1, NINE);
        assertThat(day.turns()).extracting(t -> t.atTeacher().orElse(0)).containsExactly(5, 1, 4, 2);
        assertThat(day.turns()).allMatch(t -> t.stationOf(3).isEmpty() && t.stationOf(6).isEmpty()
                && t.stationOf(4).isPresent());
        assertThat(day.teacherMinutes(3)).isZero();
    }

    /**
     * Five groups, stations and rotations are a Latin square of order 5: each row and each column a permutation (the
     * definition of Keedwell and Dénes, from memory). The square used is the cyclic one, station(g, r) = (r - g) mod 5;
     * 5 rotations of 10 minutes are the 50 minutes of common practice (no source).
     */
    @Test
    void fiveByFiveIsTheCyclicLatinSquare() {
        DayPlan day = Rotations.plan(pattern(5, 10, 0), 5, List.of(1, 2, 3, 4, 5), 0, NINE);
        for (int r = 0; r < 5; r++) {
            for (int g = 0; g < 5; g++) {
                assertThat(day.turns().get(r).stations().get(g)).isEqualTo(Math.floorMod(r - g, 5));
            }
        }
        assertThat(day.ends()).as("5 rotations of 10 minutes").isEqualTo(LocalTime.of(9, 50));
        for (int shift = 0; shift < 4; shift++) {
            DayPlan other = Rotations.plan(pattern(5, 10, 0), 5, List.of(1, 2, 3, 4, 5), shift, NINE);
            for (int g = 0; g < 5; g++) {
                int own = g;
                assertThat(other.turns().stream().map(t -> t.stations().get(own)).toList())
                        .containsExactlyInAnyOrder(0, 1, 2, 3, 4);
            }
        }
    }

    /** With three rotations a day, days that follow each other bring every group to every station within two weeks. */
    @Test
    void shortBlocksBringEverybodyEverywhereInTwoWeeks() {
        List<Set<Integer>> been = IntStream.range(0, 5).mapToObj(g -> (Set<Integer>) new HashSet<Integer>()).toList();
        List<Integer> order = new ArrayList<>(List.of(1, 2, 3, 4, 5));
        for (int day = 0; day < 10; day++) {
            DayPlan plan = Rotations.plan(pattern(5, 10, 1), 3, order, day, NINE);
            plan.turns().forEach(t -> IntStream.range(0, 5).forEach(g -> been.get(g).add(t.stations().get(g))));
            Collections.rotate(order, -3);
        }
        assertThat(been).allMatch(stations -> stations.size() == 5);
    }

    @Test
    void saysHowManyStationsAreMissing() {
        assertThatThrownBy(() -> Rotations.plan(pattern(4, 10, 0), 4, List.of(1, 2, 3, 4, 5), 0, NINE))
                .isInstanceOf(Refused.class).hasMessageContaining("5").hasMessageContaining("4");
        assertThatThrownBy(() -> Rotations.plan(pattern(4, 60, 0), 5, List.of(1), 0, LocalTime.of(20, 0)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void knowsWhichRotationRuns() {
        DayPlan day = Rotations.plan(pattern(5, 10, 2), 3, List.of(1, 2, 3, 4, 5), 0, NINE);
        assertThat(day.at(LocalTime.of(8, 59))).isEmpty();
        assertThat(day.at(NINE)).hasValue(0);
        assertThat(day.at(LocalTime.of(9, 9))).hasValue(0);
        assertThat(day.at(LocalTime.of(9, 10))).as("the change belongs to what comes").hasValue(1);
        assertThat(day.at(LocalTime.of(9, 33))).hasValue(2);
        assertThat(day.at(LocalTime.of(9, 34))).isEmpty();
    }
}
