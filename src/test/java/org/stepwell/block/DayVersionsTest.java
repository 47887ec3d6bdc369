package org.stepwell.block;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.LostTime;
import org.stepwell.core.rotation.Stop;

/** A loss that ends early: common practice, no source; expected minutes counted by hand. */
class DayVersionsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 4);
    private static final UUID GROUPS = UUID.randomUUID();
    private static final DayPlan BEGUN = new DayPlan(List.of(
            new DayPlan.Turn(LocalTime.of(9, 40), 10, 0, List.of(1, 2)),
            new DayPlan.Turn(LocalTime.of(9, 51), 10, 0, List.of(2, 1))));

    private final List<BlockDay> days = new ArrayList<>(List.of(day(1, BEGUN, null, null)));

    private static BlockDay day(int version, DayPlan plan, @Nullable Stop stop, @Nullable Integer insteadOf) {
        return new BlockDay(DAY, version, GROUPS, plan, version == 1 ? null : LostTime.SHIFT, stop, insteadOf);
    }

    private DayPlan lose(int hour, int minute, int lost) {
        Stop stop = new Stop(LocalTime.of(hour, minute), lost);
        DayPlan before = DayVersions.of(days).running().plan();
        days.add(day(days.size() + 1, LostTime.SHIFT.after(before, 1, stop.from(), lost, Map.of()), stop, null));
        return before;
    }

    private DayVersions.Early cut(int hour, int minute, int second) {
        return DayVersions.of(days).cutAt(LocalTime.of(hour, minute, second));
    }

    @Test
    void aLossIsAsLongAsItWasToTheNextWholeMinuteAndTheDayGoesOnFromBeforeIt() {
        lose(9, 45, 20);
        assertThat(cut(9, 48, 30)).isEqualTo(new DayVersions.Early(BEGUN, LostTime.SHIFT,
                new Stop(LocalTime.of(9, 45), 4), 2));
        assertThat(cut(9, 45, 0).stop().minutes()).as("at least a minute").isEqualTo(1);
        assertThat(cut(10, 4, 59).stop().minutes()).as("never longer than was said").isEqualTo(20);
        assertThatThrownBy(() -> cut(10, 5, 0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> cut(9, 44, 59)).isInstanceOf(Refused.class);
    }

    @Test
    void whatWasAddedToTheLossGoesWithItAndAnEarlierLossStays() {
        lose(9, 41, 2);
        DayPlan before = lose(9, 45, 20);
        lose(10, 5, 10);
        DayVersions.Early early = cut(9, 50, 0);
        assertThat(early).isEqualTo(new DayVersions.Early(before, LostTime.SHIFT, new Stop(LocalTime.of(9, 45), 5), 3));
        days.add(day(5, LostTime.SHIFT.after(early.plan(), 1, LocalTime.of(9, 45), 5, Map.of()), early.stop(), 3));
        DayVersions after = DayVersions.of(days);
        assertThat(after.stops()).containsExactly(new Stop(LocalTime.of(9, 41), 2), new Stop(LocalTime.of(9, 45), 5));
        assertThat(after.running().plan().ends()).as("two and five minutes later than planned")
                .isEqualTo(LocalTime.of(10, 8));
        assertThatThrownBy(() -> after.cutAt(LocalTime.of(9, 50))).as("the clock goes").isInstanceOf(Refused.class);
    }
}
