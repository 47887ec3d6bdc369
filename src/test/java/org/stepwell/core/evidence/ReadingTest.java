package org.stepwell.core.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.stepwell.core.evidence.LookMaker.look;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;

class ReadingTest {
    private static final LocalDate TAUGHT = LocalDate.parse("2026-01-05");
    private static final LocalDate DAY = LocalDate.parse("2026-01-30");
    private static final Progression NONE = new Progression("none", List.of(), List.of());
    private static final SchoolCalendar CALENDAR = new SchoolCalendar(List.of());
    private static final Pacing PACING = new Pacing(List.of(
            new PacingRow("T05", TAUGHT, LocalDate.parse("2026-01-19"), 3),
            new PacingRow("T06", TAUGHT, LocalDate.parse("2026-01-19"), 3)));
    private static final EvidenceFilter FILTER = new EvidenceFilter(Parameters.shipped());

    private static CountedLook counted(LookMaker maker) {
        return Objects.requireNonNull(EffectiveLooks.counted(maker.make(), NONE));
    }

    private static Reading read(CountedLook... looks) {
        return FILTER.read("C1", List.of(looks), PACING, CALENDAR, DAY);
    }

    private static SkillEstimate t05(CountedLook... looks) {
        return read(looks).picture().skills().get("T05");
    }

    @Test
    void neverSeenIsNoNumber() {
        SkillEstimate estimate = t05();
        assertThat(estimate.seen()).isFalse();
        assertThat(estimate.chances()).isEmpty();
        assertThat(estimate.step()).isZero();
        assertThat(estimate.lastSeen()).isNull();
        assertThatThrownBy(() -> estimate.atLeast(3)).hasMessageContaining("never seen");
        assertThat(read(counted(look("C1", "T06", "2026-01-20", 4)))
                        .picture()
                        .skills()
                        .get("T05")
                        .seen())
                .isFalse();
    }

    @Test
    void branchesHoldAChanceForSkillsNeverSeen() {
        ChildPicture picture = read().picture();
        assertThat(picture.branches().stream().mapToDouble(ChildPicture.Branch::weight).sum())
                .isCloseTo(1, within(1e-12));
        for (ChildPicture.Branch branch : picture.branches()) {
            assertThat(Arrays.stream(branch.chances().get("T05")).sum()).isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void cubesHideAndDoNotCap() {
        CountedLook[] withCubes = new CountedLook[4];
        CountedLook[] without = new CountedLook[4];
        for (int i = 0; i < 4; i++) {
            withCubes[i] = counted(look("C1", "T05", LocalDate.parse("2026-01-20").plusDays(2 * i), 3)
                    .help(Help.CUBES));
            without[i] = counted(look("C1", "T05", LocalDate.parse("2026-01-20").plusDays(2 * i), 3));
        }
        assertThat(t05(withCubes).atLeast(4)).isGreaterThan(t05(without).atLeast(4));
        assertThat(t05(withCubes).atLeast(4)).isGreaterThanOrEqualTo(t05(withCubes[0]).atLeast(4));
    }

    @Test
    void helpWeighsLess() {
        double none = t05(counted(look("C1", "T05", "2026-01-29", 5))).atLeast(4);
        double prompt = t05(counted(look("C1", "T05", "2026-01-29", 5).help(Help.PROMPT)))
                .atLeast(4);
        double modelled = t05(counted(look("C1", "T05", "2026-01-29", 5).help(Help.MODELLED)))
                .atLeast(4);
        assertThat(none).isGreaterThan(prompt + 0.05);
        assertThat(prompt).isGreaterThan(modelled);
        SkillEstimate onlyPrompted = t05(counted(look("C1", "T05", "2026-01-29", 5).help(Help.PROMPT)));
        assertThat(onlyPrompted.seen()).isTrue();
        assertThat(onlyPrompted.looks()).isZero();
        assertThat(onlyPrompted.lastSeen()).isNull();
    }

    @Test
    void tagsWeighAsTheyShould() {
        double plain = t05(counted(look("C1", "T05", "2026-01-29", 1))).atLeast(3);
        double substitute =
                t05(counted(look("C1", "T05", "2026-01-29", 1).tags("substitute"))).atLeast(3);
        double notYet = t05(counted(look("C1", "T05", "2026-01-29", 1).tags("not_yet"))).atLeast(3);
        double check = t05(counted(look("C1", "T05", "2026-01-29", 1).kind(Kind.UNIT_CHECK)))
                .atLeast(3);
        double slip = t05(counted(look("C1", "T05", "2026-01-29", 1).tags("wrong_total"))).atLeast(3);
        assertThat(substitute).isGreaterThan(plain);
        assertThat(check).isGreaterThan(plain);
        assertThat(notYet).isLessThan(plain);
        assertThat(slip).isEqualTo(plain);
    }

    @Test
    void looksOfOneSittingTellLessThanLooksOfSeveralDays() {
        SkillEstimate oneDay = t05(
                counted(look("C1", "T05", "2026-01-29", 5)),
                counted(look("C1", "T05", "2026-01-29", 5)),
                counted(look("C1", "T05", "2026-01-29", 5)));
        SkillEstimate threeDays = t05(
                counted(look("C1", "T05", "2026-01-27", 5)),
                counted(look("C1", "T05", "2026-01-28", 5)),
                counted(look("C1", "T05", "2026-01-29", 5)));
        assertThat(oneDay.looks()).isEqualTo(3);
        assertThat(oneDay.days()).isEqualTo(1);
        assertThat(oneDay.atLeast(5)).isLessThan(threeDays.atLeast(5) - 0.01);
    }

    @Test
    void orderOfArrivalNeverMatters() {
        List<CountedLook> looks = new ArrayList<>();
        Random random = new Random(11);
        for (int i = 0; i < 12; i++) {
            looks.add(counted(look(
                    "C1", i % 2 == 0 ? "T05" : "T06", TAUGHT.plusDays(random.nextInt(20)), 1 + random.nextInt(5))));
        }
        ChildPicture expected = FILTER.picture("C1", looks, PACING, CALENDAR, DAY);
        for (int i = 0; i < 50; i++) {
            Collections.shuffle(looks, random);
            assertThat(FILTER.picture("C1", looks, PACING, CALENDAR, DAY).skills())
                    .isEqualTo(expected.skills());
        }
    }

    @Test
    void silenceIsNotGrowth() {
        CountedLook look = counted(look("C1", "T05", "2026-01-08", 3));
        SkillEstimate spring =
                FILTER.picture("C1", List.of(look), PACING, CALENDAR, LocalDate.parse("2026-04-30")).skills().get("T05");
        SkillEstimate summer =
                FILTER.picture("C1", List.of(look), PACING, CALENDAR, LocalDate.parse("2026-06-12")).skills().get("T05");
        assertThat(summer.chances()).isEqualTo(spring.chances());
        assertThat(summer.stale()).isTrue();
        assertThat(t05(counted(look("C1", "T05", "2026-01-16", 3))).stale()).isFalse();
        assertThat(t05(counted(look("C1", "T05", "2026-01-15", 3))).stale()).isTrue();
    }

    @Test
    void aBreakTakesAwayAndNeverGivesCertainty() {
        CountedLook look = counted(look("C1", "T05", "2026-01-09", 5));
        SchoolCalendar closed = new SchoolCalendar(
                List.of(new SchoolCalendar.Break(LocalDate.parse("2026-01-12"), DAY, "snow")));
        SkillEstimate before =
                FILTER.picture("C1", List.of(look), PACING, closed, LocalDate.parse("2026-01-09")).skills().get("T05");
        SkillEstimate after = FILTER.picture("C1", List.of(look), PACING, closed, DAY).skills().get("T05");
        for (int step = 2; step <= 5; step++) {
            assertThat(after.atLeast(step)).isLessThan(before.atLeast(step));
        }
        assertThat(after.stale()).isFalse();
    }

    @Test
    void olderLooksShiftStepsAndNotPaces() {
        Pacing late = new Pacing(List.of(
                new PacingRow("T05", LocalDate.parse("2026-01-26"), LocalDate.parse("2026-02-09"), 3)));
        ChildPicture picture = FILTER.picture(
                "C1", List.of(counted(look("C1", "T05", "2025-10-06", 5))), late, CALENDAR, DAY);
        List<Parameters.Pace> paces = FILTER.parameters().paces();
        for (int b = 0; b < paces.size(); b++) {
            assertThat(picture.branches().get(b).weight()).isCloseTo(paces.get(b).weight(), within(1e-12));
        }
        assertThat(picture.skills().get("T05").atLeast(4)).isGreaterThan(0.3);
    }

    @Test
    void leavingOneOutIsReadingWithoutIt() {
        CountedLook one = counted(look("C1", "T05", "2026-01-20", 2));
        CountedLook two = counted(look("C1", "T05", "2026-01-22", 4));
        CountedLook other = counted(look("C1", "T06", "2026-01-22", 5));
        Reading all = read(one, two, other);
        assertThat(all.without(two.look().id()).skills())
                .isEqualTo(read(one, other).picture().skills());
        assertThat(all.with(List.of()).picture().skills()).isEqualTo(all.picture().skills());
        assertThat(read(one, other).with(List.of(two)).picture().skills())
                .isEqualTo(all.picture().skills());
        assertThat(read(one).with(List.of(two, other), DAY).picture().skills())
                .isEqualTo(all.picture().skills());
        assertThatThrownBy(() -> all.without(new UUID(1, 1))).hasMessageContaining("not among those that count");
    }

    @Test
    void theNextLookHasAChanceForEachStep() {
        Reading reading = read(counted(look("C1", "T05", "2026-01-29", 5)));
        assertThat(Arrays.stream(reading.nextLook("T05", Help.NONE)).sum()).isCloseTo(1, within(1e-12));
        assertThat(reading.nextLook("T05", Help.CUBES)[3]).isZero();
        assertThat(reading.nextLook("T05", Help.NONE)[4]).isGreaterThan(reading.nextLook("T06", Help.NONE)[4]);
        assertThatThrownBy(() -> reading.nextLook("T99", Help.NONE)).hasMessageContaining("T99");
    }
}
