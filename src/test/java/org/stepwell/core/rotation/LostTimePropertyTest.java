package org.stepwell.core.rotation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.DayPlan.Turn;

class LostTimePropertyTest {
    private static final LocalTime NINE = LocalTime.of(9, 0);

    private static DayPlan day(int rotations, int minutes, int change) {
        return Rotations.plan(RotationsPropertyTest.pattern(5, minutes, change), rotations, List.of(1, 2, 3, 4, 5), 0,
                NINE);
    }

    private static int worked(DayPlan plan) {
        return plan.turns().stream().mapToInt(Turn::minutes).sum();
    }

    /** What is true of any loss at any time, whatever is done about it. */
    @Test
    void keepsOrderAndEndsWhenItSaysItWill() {
        Random random = new Random(20312);
        for (int run = 0; run < 20000; run++) {
            holds(random.nextInt(1, 6), random.nextInt(3, 31), random.nextInt(6), random.nextInt(-10, 161),
                    random.nextInt(1, 61), LostTime.values()[run % 3]);
        }
    }

    private static void holds(int rotations, int minutes, int change, int at, int lost, LostTime way) {
        DayPlan before = day(rotations, minutes, change);
        LocalTime from = NINE.plusMinutes(at);
        DayPlan after;
        try {
            after = way.after(before, change, from, lost, Map.of(2, 10.0));
        } catch (Refused closed) {
            assertThat(way == LostTime.SHORTEN || !before.ends().isAfter(from)).isTrue();
            return;
        }
        List<Turn> over = before.turns().stream().filter(t -> !t.ends().isAfter(from)).toList();
        assertThat(after.turns().subList(0, Math.min(over.size(), after.turns().size()))).isEqualTo(over);
        for (int i = 1; i < after.turns().size(); i++) {
            assertThat(after.turns().get(i).starts()).as("no two at once")
                    .isAfterOrEqualTo(after.turns().get(i - 1).ends());
        }
        assertThat(after.turns()).allMatch(t -> t.minutes() >= LostTime.SHORTEST || minutes < LostTime.SHORTEST
                || before.turns().contains(t));
        if (way == LostTime.SHIFT) {
            assertThat(worked(after)).as("nobody loses a minute").isEqualTo(worked(before));
            assertThat(DayPlan.between(before.ends(), after.ends())).isBetween(0, lost);
        } else {
            assertThat(after.turns().isEmpty() || !after.ends().isAfter(before.ends())).as("ends when planned").isTrue();
            assertThat(worked(after)).isLessThanOrEqualTo(worked(before));
        }
    }

    @Test
    void aDrillInTheMiddleStopsTheClockOfTheRotationThatRuns() {
        DayPlan after = LostTime.SHIFT.after(day(3, 10, 1), 1, LocalTime.of(9, 15), 8, Map.of());
        assertThat(after.turns().get(0)).isEqualTo(day(3, 10, 1).turns().get(0));
        assertThat(after.turns().get(1)).satisfies(t -> {
            assertThat(t.starts()).isEqualTo(LocalTime.of(9, 11));
            assertThat(t.minutes()).isEqualTo(10);
            assertThat(t.ends()).isEqualTo(LocalTime.of(9, 29));
        });
        assertThat(after.turns().get(2).starts()).isEqualTo(LocalTime.of(9, 30));
        assertThat(after.ends()).isEqualTo(LocalTime.of(9, 40));
    }

    @Test
    void aSecondLossInTheSameRotationAddsUp() {
        DayPlan once = LostTime.SHIFT.after(day(2, 10, 0), 0, LocalTime.of(9, 4), 5, Map.of());
        DayPlan twice = LostTime.SHIFT.after(once, 0, LocalTime.of(9, 12), 3, Map.of());
        assertThat(twice.turns().getFirst().ends()).isEqualTo(LocalTime.of(9, 18));
        assertThat(twice.ends()).isEqualTo(LocalTime.of(9, 28));
    }

    @Test
    void shorteningSharesWhatIsLeft() {
        DayPlan after = LostTime.SHORTEN.after(day(4, 10, 1), 1, NINE, 13, Map.of());
        assertThat(after.turns()).extracting(Turn::minutes).containsExactly(7, 7, 7, 6);
        assertThat(after.turns().getFirst().starts()).isEqualTo(LocalTime.of(9, 13));
        assertThat(after.ends()).isEqualTo(day(4, 10, 1).ends());
        assertThatThrownBy(() -> LostTime.SHORTEN.after(day(4, 10, 1), 1, NINE, 35, Map.of()))
                .isInstanceOf(Refused.class).hasMessageContaining("8").hasMessageContaining("4");
    }

    /** The group that is owed most keeps its turn; of those that are owed alike, the last one goes. */
    @Test
    void droppingTakesTheRotationOfTheGroupThatIsOwedLeast() {
        Map<Integer, Double> owed = new TreeMap<>(Map.of(1, 0.0, 2, 4.0, 3, 12.0));
        DayPlan after = LostTime.DROP.after(day(3, 10, 0), 0, NINE, 10, owed);
        assertThat(after.turns()).extracting(t -> t.atTeacher().orElse(0)).containsExactly(2, 3);
        DayPlan alike = LostTime.DROP.after(day(3, 10, 0), 0, NINE, 10, Map.of());
        assertThat(alike.turns()).extracting(t -> t.atTeacher().orElse(0)).containsExactly(1, 2);
    }

    @Test
    void whatWasDoneBeforeADropIsNotLost() {
        DayPlan after = LostTime.DROP.after(day(2, 10, 0), 0, LocalTime.of(9, 6), 14, Map.of());
        assertThat(after.turns()).hasSize(1);
        assertThat(after.turns().getFirst().minutes()).isEqualTo(6);
        assertThat(after.teacherMinutes(1)).isEqualTo(6);
        assertThat(after.teacherMinutes(2)).isZero();
    }

    /** A drill of five minutes lasts three more: what was worked before it counts, and the two do not overlap. */
    @Test
    void aStopToldOfInAStopAddsToIt() {
        Stop drill = new Stop(LocalTime.of(9, 4), 5);
        assertThat(Stop.next(List.of(drill), LocalTime.of(9, 6))).isEqualTo(LocalTime.of(9, 9));
        assertThat(Stop.next(List.of(drill, new Stop(LocalTime.of(9, 9), 3)), LocalTime.of(9, 6)))
                .isEqualTo(LocalTime.of(9, 12));
        assertThat(Stop.next(List.of(drill), LocalTime.of(9, 20))).isEqualTo(LocalTime.of(9, 20));
        DayPlan once = LostTime.SHIFT.after(day(2, 10, 0), 0, drill.from(), drill.minutes(), Map.of());
        DayPlan more = LostTime.DROP.after(once, 0, drill.ends(), 14, Map.of());
        assertThat(more.turns()).extracting(Turn::minutes).as("four were worked before the drill").containsExactly(4);
    }

    /** Late in the day what ends when planned stays open; only what would run past midnight is refused. */
    @Test
    void nearMidnightOnlyWhatWouldRunPastItIsRefused() {
        DayPlan late = Rotations.plan(RotationsPropertyTest.pattern(5, 10, 0), 3, List.of(1, 2, 3, 4, 5), 0,
                LocalTime.of(23, 25));
        LocalTime from = LocalTime.of(23, 25);
        assertThatThrownBy(() -> LostTime.SHIFT.after(late, 0, from, 10, Map.of())).isInstanceOf(Refused.class)
                .hasMessageContaining("midnight");
        assertThat(LostTime.SHORTEN.after(late, 0, from, 10, Map.of()).ends()).isEqualTo(LocalTime.of(23, 55));
        assertThat(LostTime.DROP.after(late, 0, from, 10, Map.of()).turns()).hasSize(2);
        assertThatThrownBy(() -> LostTime.DROP.after(late, 0, LocalTime.of(23, 50), 10, Map.of()))
                .isInstanceOf(Refused.class).hasMessageContaining("midnight");
    }

    @Test
    void afterTheEndNothingCanBeMoved() {
        assertThatThrownBy(() -> LostTime.SHIFT.after(day(2, 10, 0), 0, LocalTime.of(9, 20), 5, Map.of()))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> LostTime.SHIFT.after(day(2, 10, 0), 0, NINE, 0, Map.of()))
                .isInstanceOf(Refused.class);
    }
}
