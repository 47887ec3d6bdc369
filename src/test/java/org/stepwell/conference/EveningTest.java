package org.stepwell.conference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.wording.Language;

/** Times counted by hand. */
class EveningTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 12);

    private static Evening evening(String from, String to, int minutes, int talksToBreak, int breakMinutes) {
        return new Evening(DAY, LocalTime.parse(from), LocalTime.parse(to), minutes, talksToBreak, breakMinutes);
    }

    private static List<String> told(List<Slot> slots) {
        return slots.stream().map(s -> s.start() + (s.pause() ? " break" : "")).toList();
    }

    @Test
    void talksFollowEachOtherWithABreakAfterEachSoMany() {
        assertThat(told(evening("15:00", "16:35", 15, 2, 10).slots()))
                .containsExactly("15:00", "15:15", "15:30 break", "15:40", "15:55", "16:10 break", "16:20");
    }

    @Test
    void noBreakStandsWhereNoTalkFollowsAndNoTalkRunsOver() {
        assertThat(told(evening("15:00", "16:00", 15, 2, 10).slots()))
                .containsExactly("15:00", "15:15", "15:30 break", "15:40");
        assertThat(told(evening("15:00", "15:45", 15, 2, 10).slots())).containsExactly("15:00", "15:15");
        assertThat(told(evening("15:00", "15:59", 20, 0, 0).slots())).containsExactly("15:00", "15:20");
        assertThat(told(evening("23:00", "23:59", 30, 0, 0).slots())).as("never into the next day").containsExactly("23:00");
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> evening("16:00", "15:00", 15, 0, 0).slots()).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> evening("15:00", "16:00", 4, 0, 0).slots()).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> evening("15:00", "16:00", 15, 3, 0).slots()).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> evening("15:00", "15:10", 15, 0, 0).slots()).isInstanceOf(Refused.class);
    }

    @Test
    void freeTimesGoToThoseWhoHaveNoneInTheirOrder() {
        UUID ana = UUID.randomUUID();
        UUID ben = UUID.randomUUID();
        UUID cai = UUID.randomUUID();
        List<Slot> slots = new java.util.ArrayList<>(evening("15:00", "16:00", 15, 2, 5).slots());
        slots.set(1, slots.get(1).of(ben, 1, Language.SPANISH));
        List<Slot> filled = Evening.filled(slots, List.of(ana, ben, cai));
        assertThat(filled).extracting(Slot::childId).containsExactly(ana, ben, null, cai);
        assertThat(filled.get(1).language()).isEqualTo(Language.SPANISH);
    }
}
