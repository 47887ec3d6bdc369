package org.stepwell.core.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.stepwell.core.evidence.LookMaker.look;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stepwell.core.progression.Progression;

class EffectiveLooksTest {
    private static final LocalDate DAY = LocalDate.parse("2026-01-30");
    private static final Progression PROGRESSION = new Progression(
            "test",
            List.of(),
            List.of(new Progression.Phrase(
                    "T06", Progression.OBJECTS_BELONG, 3, "en", "objects", Progression.Phrase.Kind.HELP)));

    private static EffectiveLooks of(Look... looks) {
        return EffectiveLooks.of(List.of(looks), PROGRESSION, DAY);
    }

    private static List<Integer> steps(EffectiveLooks looks) {
        return looks.of("C1").stream().map(CountedLook::step).toList();
    }

    @Test
    void knowsWhatIsDatedUpToTheEndOfTheDay() {
        Look late = look("C1", "T05", "2026-01-30", 3).at("2026-01-30T23:59:59-06:00").make();
        Look tomorrow = look("C1", "T05", "2026-01-31", 4).at("2026-01-31T00:00:00-06:00").make();
        assertThat(steps(of(late, tomorrow))).containsExactly(3);
    }

    @Test
    void aReplacementStandsInAndItsTargetIsOut() {
        Look first = look("C1", "T05", "2026-01-12", 2).make();
        Look second = look("C1", "T05", "2026-01-12", 4).replaces(first).make();
        assertThat(steps(of(first, second))).containsExactly(4);
        assertThat(steps(of(second, first))).containsExactly(4);
        assertThat(steps(of(second))).containsExactly(4);
    }

    @Test
    void aCorrectionDatedLaterIsNotKnownYet() {
        Look first = look("C1", "T05", "2026-01-12", 2).make();
        Look later = look("C1", "T05", "2026-02-02", 4).replaces(first).make();
        assertThat(steps(of(first, later))).containsExactly(2);
    }

    @Test
    void nothingComesBackAlongAChain() {
        Look first = look("C1", "T05", "2026-01-12", 2).make();
        Look second = look("C1", "T05", "2026-01-12", 3).replaces(first).make();
        Look third = look("C1", "T05", "2026-01-12", 4).replaces(second).make();
        Look gone = look("C1", "T05", "2026-01-13", null).withdraws(third).make();
        assertThat(steps(of(third, first, second))).containsExactly(4);
        assertThat(steps(of(gone, third, first, second))).isEmpty();
    }

    @Test
    void competingCorrectionsOfOneLookCountOnce() {
        Look first = look("C1", "T05", "2026-01-12", 2).make();
        Look early = look("C1", "T05", "2026-01-12", 3).at("2026-01-12T11:00:00-06:00").replaces(first).make();
        Look late = look("C1", "T05", "2026-01-12", 5).at("2026-01-12T12:00:00-06:00").replaces(first).make();
        assertThat(steps(of(late, first, early))).containsExactly(5);
        assertThat(steps(of(early, late))).containsExactly(5);
    }

    @Test
    void aCorrectionMovesALookToTheRightChild() {
        Look wrong = look("C1", "T05", "2026-01-12", 4).make();
        Look right = look("C2", "T05", "2026-01-12", 4).replaces(wrong).make();
        EffectiveLooks looks = of(right, wrong);
        assertThat(looks.of("C1")).isEmpty();
        assertThat(looks.of("C2")).hasSize(1);
        assertThat(looks.children()).containsExactly("C1", "C2");
    }

    @Test
    void oneIdIsOneLook() {
        Look one = look("C1", "T05", "2026-01-12", 4).make();
        assertThat(steps(of(one, one))).containsExactly(4);
    }

    @Test
    void aRingOfCorrectionsEndsAndCountsNothing() {
        Look a = look("C1", "T05", "2026-01-12", 2).make();
        Look b = look("C1", "T05", "2026-01-12", 3).replaces(a).make();
        Look ring = look("C1", "T05", "2026-01-12", 2).id(a.id()).replaces(b).make();
        assertThat(steps(of(ring, b))).isEmpty();
    }

    @Test
    void orderOfArrivalNeverMatters() {
        List<Look> looks = new ArrayList<>();
        Look first = look("C1", "T05", "2026-01-12", 2).make();
        Look second = look("C1", "T05", "2026-01-12", 3).replaces(first).make();
        looks.add(first);
        looks.add(second);
        looks.add(look("C1", "T05", "2026-01-13", null).withdraws(second).make());
        Look other = look("C1", "T05", "2026-01-14", 2).make();
        looks.add(other);
        looks.add(look("C1", "T05", "2026-01-14", 3).replaces(other).make());
        looks.add(look("C1", "T05", "2026-01-14", 4).replaces(other).make());
        looks.add(look("C1", "T06", "2026-01-15", 1).make());
        List<CountedLook> expected = EffectiveLooks.of(looks, PROGRESSION, DAY).of("C1");
        Random random = new Random(7);
        for (int i = 0; i < 100; i++) {
            Collections.shuffle(looks, random);
            assertThat(EffectiveLooks.of(looks, PROGRESSION, DAY).of("C1")).isEqualTo(expected);
        }
    }

    @Test
    void notesAndInvalidLooksAreNoEvidence() {
        assertThat(steps(of(
                        look("C1", null, "2026-01-12", null).make(),
                        look("C1", "T05", "2026-01-12", 5).tags("not_valid").make(),
                        look("C1", "T05", "2026-01-12", 5).tags("copied").make())))
                .isEmpty();
    }

    @Test
    void notYetIsTheFirstStep() {
        assertThat(steps(of(look("C1", "T05", "2026-01-12", 1).tags("not_yet").make()))).containsExactly(1);
        assertThat(steps(of(look("C1", "T05", "2026-01-12", 3).tags("not_yet").make()))).containsExactly(1);
    }

    @Test
    void aSlipOrASelfCorrectionKeepsTheStep() {
        assertThat(steps(of(
                        look("C1", "T05", "2026-01-12", 4).tags("wrong_total").make(),
                        look("C1", "T05", "2026-01-13", 4).tags("self_corrected").make())))
                .containsExactly(4, 4);
    }

    @Test
    void cubesSayAtLeastUnlessObjectsBelongToTheTask() {
        EffectiveLooks looks = of(
                look("C1", "T05", "2026-01-12", 3).help(Help.CUBES).make(),
                look("C1", "T06", "2026-01-13", 3).help(Help.CUBES).make(),
                look("C1", "T05", "2026-01-14", 2).help(Help.CUBES).make());
        assertThat(looks.of("C1").stream().map(CountedLook::atLeast)).containsExactly(true, false, false);
    }

    @Test
    void showingDrawingAndTheHomeLanguageExplainAsWellAsSaying() {
        for (String tag : List.of("said", "showed", "drew", "home_language")) {
            EffectiveLooks looks = of(look("C1", "T05", "2026-01-12", 5).tags(tag).make());
            assertThat(looks.of("C1").getFirst().explained()).isTrue();
        }
        assertThat(of(look("C1", "T05", "2026-01-12", 5).tags("from_paper").make())
                        .of("C1")
                        .getFirst()
                        .explained())
                .isFalse();
    }

    @Test
    void aDayHasItsHighestValidStep() {
        EffectiveLooks looks = of(
                look("C1", "T05", "2026-01-12", 2).make(),
                look("C1", "T05", "2026-01-12", 4).make(),
                look("C1", "T05", "2026-01-12", 5).help(Help.PROMPT).make(),
                look("C1", "T05", "2026-01-13", 5).help(Help.MODELLED).make());
        List<DayStep> days = looks.days("C1", "T05");
        assertThat(days).hasSize(1);
        assertThat(days.getFirst().step()).isEqualTo(4);
        assertThat(days.getFirst().looks()).hasSize(2);
        assertThat(days.getFirst().atLeast()).isFalse();
    }

    @Test
    void aDayWithCubesOnlyIsHiddenAndNeverBelow() {
        DayStep hidden = of(look("C1", "T05", "2026-01-12", 3).help(Help.CUBES).make())
                .days("C1", "T05")
                .getFirst();
        assertThat(hidden.against(4)).isEqualTo(DayStep.Reading.HIDDEN);
        assertThat(hidden.against(3)).isEqualTo(DayStep.Reading.MEETS);
        DayStep seen = of(
                        look("C1", "T05", "2026-01-12", 3).help(Help.CUBES).make(),
                        look("C1", "T05", "2026-01-12", 2).make())
                .days("C1", "T05")
                .getFirst();
        assertThat(seen.step()).isEqualTo(3);
        assertThat(seen.against(4)).isEqualTo(DayStep.Reading.BELOW);
    }

    @Test
    void aUnitCheckIsOneDayHoweverManyItems() {
        EffectiveLooks looks = of(
                look("C1", "T05", "2026-01-12", 4).kind(Kind.UNIT_CHECK).make(),
                look("C1", "T05", "2026-01-12", 3).kind(Kind.UNIT_CHECK).make(),
                look("C1", "T05", "2026-01-12", 4).kind(Kind.UNIT_CHECK).make());
        assertThat(looks.days("C1", "T05")).hasSize(1);
        assertThat(EffectiveLooks.stepOfItem(4, true)).isEqualTo(4);
        assertThat(EffectiveLooks.stepOfItem(4, false)).isEqualTo(3);
        assertThat(EffectiveLooks.stepOfItem(1, false)).isEqualTo(1);
        assertThatThrownBy(() -> EffectiveLooks.stepOfItem(6, true)).hasMessageContaining("1-5");
    }

    @Test
    void daysOfTwoSkillsAreNotMixed() {
        List<CountedLook> mixed = of(
                        look("C1", "T05", "2026-01-12", 4).make(),
                        look("C1", "T06", "2026-01-12", 4).make())
                .of("C1");
        assertThatThrownBy(() -> DayStep.of(mixed)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Corrections come late, cross children and chain; what a day knows must never depend on what came after it. */
    @Test
    void aBookAskedForADayKnowsWhatThatDayKnew() {
        Random random = new Random(20261126);
        for (int round = 0; round < 40; round++) {
            List<Look> all = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                LocalDate day = LocalDate.parse("2026-01-05").plusDays(random.nextInt(20));
                LookMaker made = look("C" + random.nextInt(3), "T05", day.toString(), 1 + random.nextInt(5));
                Look target = all.isEmpty() || random.nextInt(3) > 0 ? null : all.get(random.nextInt(all.size()));
                all.add(target == null ? made.make()
                        : random.nextBoolean() ? made.replaces(target).make() : made.withdraws(target).make());
            }
            LookBook book = new LookBook(all, PROGRESSION);
            for (int d = 0; d < 22; d++) {
                LocalDate day = LocalDate.parse("2026-01-04").plusDays(d);
                EffectiveLooks then = EffectiveLooks.of(
                        all.stream().filter(l -> !l.day().isAfter(day)).toList(), PROGRESSION, day);
                EffectiveLooks asked = book.upTo(day);
                assertThat(asked.children()).as("round " + round + ", " + day).isEqualTo(then.children());
                for (String child : List.of("C0", "C1", "C2")) {
                    assertThat(asked.of(child)).as("round " + round + ", " + day).isEqualTo(then.of(child));
                }
            }
        }
    }
}
