package org.stepwell.observation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;

class TabletClockTest {
    private static LocalDate day(String observedAt, @Nullable Long clockOffsetMs) {
        return TabletClock.corrected(new Look(UUID.randomUUID(), OffsetDateTime.parse(observedAt), "q1", "T05", "17", 3, Help.NONE, Kind.TABLE,
                "teacher", Set.of(), null, null, false, clockOffsetMs)).day();
    }

    @Test
    void theDayIsTheLocalDateInItsOwnOffset() {
        assertThat(day("2026-03-02T23:30:00-06:00", null)).isEqualTo("2026-03-02");
        assertThat(day("2026-03-02T23:30:00-06:00", 1500L)).isEqualTo("2026-03-02");
    }

    @Test
    void theDayIsNotMovedByAClockThatIsHoursAhead() {
        assertThat(day("2026-03-03T01:30:00-06:00", 3 * 3_600_000L)).isEqualTo("2026-03-02");
    }

    @Test
    void theDayIsNotMovedByAClockThatIsADayBehind() {
        assertThat(day("2026-03-01T09:30:00-06:00", -86_400_000L)).isEqualTo("2026-03-02");
    }

    @Test
    void theDayIsNotMovedByAClockThatLostItsBattery() {
        assertThat(day("1970-01-01T00:10:00Z", -1_772_442_600_000L)).isEqualTo("2026-03-02");
    }

    @Test
    void theDayIsNotMovedBySecondsNorByADifferenceThatCannotBe() {
        assertThat(day("2026-03-02T00:00:30-06:00", 60_000L)).isEqualTo("2026-03-02");
        assertThat(day("2026-03-02T00:00:30-06:00", Long.MIN_VALUE)).isEqualTo("2026-03-02");
    }
}
