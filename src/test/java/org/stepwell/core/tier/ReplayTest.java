package org.stepwell.core.tier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.LookMaker;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;

class ReplayTest {
    private static final long SEED = 71;
    private static final List<LocalDate> FRIDAYS = List.of(
            LocalDate.of(2026, 2, 13), LocalDate.of(2026, 2, 20), LocalDate.of(2026, 2, 27),
            LocalDate.of(2026, 3, 6), LocalDate.of(2026, 3, 13), LocalDate.of(2026, 3, 20));

    private final ClassSetting setting = new ClassSetting(
            new Progression("none", List.of(), List.of()),
            new Pacing(List.of("A1", "A2", "A3").stream()
                    .map(s -> new PacingRow(s, LocalDate.of(2026, 1, 26), LocalDate.of(2026, 2, 9), 3))
                    .toList()),
            new SchoolCalendar(List.of()));
    private final List<Look> looks = looks(new Random(SEED));

    /** Five children who stand at steps 1 to 5, seen a few times a week, not all of them from the start. */
    private static List<Look> looks(Random random) {
        List<Look> looks = new ArrayList<>();
        LocalDate start = LocalDate.of(2026, 2, 2);
        for (int c = 1; c <= 5; c++) {
            for (int d = c == 5 ? 30 : 0; d < 46; d++) {
                LocalDate day = start.plusDays(d);
                if (day.getDayOfWeek().getValue() <= 5 && random.nextInt(3) > 0) {
                    int step = Math.max(1, Math.min(5, c + random.nextInt(3) - 1));
                    looks.add(LookMaker.look("C" + c, "A" + (1 + random.nextInt(3)), day, step)
                            .kind(random.nextBoolean() ? Kind.TABLE : Kind.EXIT_TASK)
                            .help(random.nextInt(5) == 0 ? Help.CUBES : Help.NONE)
                            .make());
                }
            }
        }
        return looks;
    }

    private List<ClassReview> run(String rules, List<Look> all, List<LocalDate> days) {
        return new Replay(setting, all, RuleFile.shipped(rules), Parameters.shipped()).run(days);
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void eachReviewKnowsOnlyWhatIsDatedUpToItsDay(String rules) {
        List<ClassReview> whole = run(rules, looks, FRIDAYS);
        for (int n = 1; n <= FRIDAYS.size(); n++) {
            LocalDate last = FRIDAYS.get(n - 1);
            List<Look> known = looks.stream().filter(l -> !l.day().isAfter(last)).toList();
            assertEquals(whole.subList(0, n), run(rules, known, FRIDAYS.subList(0, n)), "seed " + SEED);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void theOrderOfArrivalNeverMatters(String rules) {
        List<Look> shuffled = new ArrayList<>(looks);
        Collections.shuffle(shuffled, new Random(SEED));
        List<LocalDate> backward = FRIDAYS.reversed();
        assertEquals(run(rules, looks, FRIDAYS), run(rules, shuffled, backward), "seed " + SEED);
    }

    @Test
    void suggestionsAreAcceptedAsTheyCome() {
        List<ClassReview> reviews = run(RuleFile.WEIGHED, looks, FRIDAYS);
        for (int n = 1; n < reviews.size(); n++) {
            for (Suggestion before : reviews.get(n - 1).suggestions()) {
                Suggestion now = reviews.get(n).of(before.child()).orElseThrow();
                assertEquals(before.suggested(), now.current(), now.child() + " on " + now.day());
            }
        }
        assertTrue(reviews.getFirst().suggestions().stream().allMatch(s -> s.current() == Tier.ON_LEVEL));
        Suggestion lowest = reviews.getLast().of("C1").orElseThrow();
        assertEquals(Tier.SUPPORT, lowest.suggested());
    }

    @Test
    void aChildAppearsWithItsFirstRow() {
        LocalDate first = looks.stream()
                .filter(l -> l.child().equals("C5"))
                .map(Look::day)
                .min(LocalDate::compareTo)
                .orElseThrow();
        for (ClassReview review : run(RuleFile.WEIGHED, looks, FRIDAYS)) {
            assertEquals(!first.isAfter(review.day()), review.of("C5").isPresent(), review.day().toString());
        }
    }

    @Test
    void aNoteWithoutAStepLetsAChildAppearAndIsNoEvidence() {
        List<Look> one = List.of(LookMaker.look("C9", null, "2026-02-10", null).make());
        Suggestion said = run(RuleFile.WEIGHED, one, FRIDAYS.subList(0, 1)).getFirst().of("C9").orElseThrow();
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(0, said.looks());
        assertEquals(0, said.days());
    }

    @Test
    void looksAndDaysAreThoseOfValidEvidenceOnDueSkills() {
        List<Look> some = List.of(
                LookMaker.look("C9", "A1", "2026-02-10", 3).make(),
                LookMaker.look("C9", "A2", "2026-02-10", 3).make(),
                LookMaker.look("C9", "A1", "2026-02-11", 3).help(Help.PROMPT).make(),
                LookMaker.look("C9", "A1", "2026-02-12", 3).tags("not_valid").make(),
                LookMaker.look("C9", "B7", "2026-02-12", 3).make());
        Suggestion said = run(RuleFile.WEIGHED, some, FRIDAYS.subList(0, 1)).getFirst().of("C9").orElseThrow();
        assertEquals(2, said.looks());
        assertEquals(1, said.days());
    }

    @Test
    void everySittingHandsOverThePictures() {
        List<Replay.Sitting> sittings = new ArrayList<>();
        new Replay(setting, looks, RuleFile.shipped(RuleFile.WEIGHED), Parameters.shipped())
                .run(FRIDAYS, sittings::add);
        assertEquals(FRIDAYS, sittings.stream().map(s -> s.review().day()).toList());
        for (Replay.Sitting sitting : sittings) {
            assertEquals(sitting.review().byChild().keySet(), sitting.pictures().keySet());
        }
    }

    @Test
    void aLookDatedAfterTheLastReviewChangesNothing() {
        List<Look> more = new ArrayList<>(looks);
        more.add(LookMaker.look("C1", "A1", "2026-04-01", 5).make());
        assertEquals(run(RuleFile.WEIGHED, looks, FRIDAYS), run(RuleFile.WEIGHED, more, FRIDAYS));
    }

    @Test
    void whatIfTellsWhoWouldHaveMovedBesideWhatWasDecided() {
        List<WhatIf.Decided> decided = FRIDAYS.stream()
                .map(day -> new WhatIf.Decided(day, "C1", Tier.ON_LEVEL))
                .toList();
        WhatIf usual = WhatIf.tried(
                setting, looks, decided, FRIDAYS, Map.of(), RuleFile.shipped(RuleFile.WEIGHED), Parameters.shipped());
        RuleFile strict = RuleFile.shipped(RuleFile.WEIGHED).with("more_help", Measure.CHANCE_SUPPORT, 1);
        WhatIf never = WhatIf.tried(setting, looks, decided, FRIDAYS, Map.of(), strict, Parameters.shipped());
        List<WhatIf.Line> moves = usual.moves().stream()
                .filter(l -> l.child().equals("C1"))
                .toList();
        assertFalse(moves.isEmpty());
        assertEquals(Tier.SUPPORT, moves.getFirst().after());
        assertEquals(Tier.ON_LEVEL, moves.getFirst().decided());
        assertFalse(moves.getFirst().agrees());
        assertTrue(never.moves().stream().noneMatch(l -> l.after() == Tier.SUPPORT));
        assertEquals(strict.version(), never.version());
    }
}
