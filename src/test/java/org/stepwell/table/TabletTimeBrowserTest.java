package org.stepwell.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.stepwell.table.FaultyDay.TEACHER;

import com.microsoft.playwright.Clock;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

/** No clock and no zone a tablet is set to moves a look to another day unseen. */
class TabletTimeBrowserTest extends OnAFaultyDay {

    @Test
    void aClockADayBehindMovesNoLookToYesterday() {
        clockOffBy(Duration.ofDays(-1), "24 h");
    }

    @Test
    void aClockHoursAheadIsSaidAndGoesWithEachLook() {
        clockOffBy(Duration.ofHours(3), "3 h");
    }

    @Test
    void aClockAYearAheadDatesNoLookInTheFuture() {
        clockOffBy(Duration.ofDays(365), "365 days");
    }

    @Test
    void aClockThatLostItsBatteryDatesNoLookInThePast() {
        Duration since = Duration.between(Instant.now(), Instant.parse("2000-01-01T00:00:00Z"));
        clockOffBy(since, Math.round(since.toMinutes() / -1440.0) + " days");
    }

    private void clockOffBy(Duration off, String said) {
        Tablet tablet = Tablet.inWindow(day.browser(), day.proxy().address(), promises);
        tablet.page().clock().install(new Clock.InstallOptions().setTime(Instant.now().plus(off).toEpochMilli()));
        tablet.signIn(TEACHER);
        tablet.openVisit();
        assertThat(tablet.page().locator("#notices")).containsText("off by " + said);
        tablet.save("q0603", 3);
        day.proxy().goAway();
        tablet.save("q0607", 3);
        endsWell(tablet);
        assertThat(stored()).allSatisfy(row ->
                assertThat(Duration.ofMillis(row.clockOffsetMs()).minus(off)).isBetween(Duration.ofMinutes(-1),
                        Duration.ofMinutes(1)));
    }

    /** Of the two farthest zones there are, at every moment at least one shows another day than the school. */
    @Test
    void aTabletSetToAnotherZoneSaysSoAndTheSchoolsDayHolds() {
        for (String zone : List.of("Pacific/Kiritimati", "Pacific/Pago_Pago")) {
            Tablet tablet = Tablet.inWindow(day.browser(), day.proxy().address(), promises, ZoneId.of(zone));
            tablet.signIn(TEACHER);
            tablet.openVisit();
            assertThat(tablet.page().locator("#notices")).containsText("America/Chicago");
            tablet.save("q0603", 3);
            endsWell(tablet);
        }
        assertThat(stored()).extracting(StoredLooks.Row::day)
                .containsOnly(LocalDate.now(Tablet.SCHOOL));
    }

    /** In Chicago clocks go back on 1 November 2026 and forward on 8 March 2026 at two (IANA time zone database). */
    @Test
    void theNightTheClocksChangeKeepsOrderAndDay() throws IOException {
        assertThat(overTheChange(Instant.parse("2026-11-01T06:59:30Z"))).extracting(at -> at.toString().substring(0, 16)
                + at.getOffset()).containsExactly("2026-11-01T01:59-05:00", "2026-11-01T01:00-06:00");
        assertThat(overTheChange(Instant.parse("2026-03-08T07:59:30Z"))).extracting(at -> at.toString().substring(0, 16)
                + at.getOffset()).containsExactly("2026-03-08T01:59-06:00", "2026-03-08T03:00-05:00");
    }

    private static List<OffsetDateTime> overTheChange(Instant before) throws IOException {
        try (FaultyServer server = new FaultyServer(); TablePage tablet = new TablePage(server.address())) {
            server.setClockAhead(Duration.between(Instant.now(), before).toMillis());
            tablet.page.clock().install(new Clock.InstallOptions().setTime(before.toEpochMilli()));
            tablet.open();
            tablet.seat("k1");
            assertThat(tablet.page.locator("#notices")).not().containsText("clock is off");
            server.meet(503);
            tablet.log("made_ten", "k1");
            tablet.page.clock().fastForward(60_000);
            if (tablet.key("uncover").isVisible()) {
                tablet.key("uncover").click();
            }
            tablet.key("cell-wrote_it-k1").click();
            assertThat(tablet.count()).containsText("2 on this tablet");
            server.meet(FaultyServer.Fault.NONE);
            tablet.putDown();
            tablet.until(() -> server.kept().size() == 2);
            assertThat(server.kept()).allSatisfy(look ->
                    assertThat(Math.abs(look.get("clock_offset_ms").asLong())).isLessThan(120_000));
            List<OffsetDateTime> times = server.kept().stream()
                    .map(look -> OffsetDateTime.parse(look.get("observed_at").asString())).toList();
            assertThat(Duration.between(times.getFirst(), times.getLast())).isBetween(Duration.ofSeconds(60),
                    Duration.ofMinutes(3));
            return times;
        }
    }
}
