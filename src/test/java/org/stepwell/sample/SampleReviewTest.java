package org.stepwell.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.tier.Caution;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.ClassDip;
import org.stepwell.core.tier.ClassReview;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Note;
import org.stepwell.core.tier.Reviewer;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.SuggestionWording;

/** What a review of the sample class says about the children whose stories were written by hand. */
class SampleReviewTest {
    private static final SampleReview DEFAULT = new SampleReview(RuleFile.DEFAULT);

    private static boolean says(String given, String part) {
        return DEFAULT.english.notes(DEFAULT.of(given)).stream().anyMatch(n -> n.contains(part));
    }

    private static List<Caution> firstTwo(String given) {
        return DEFAULT.of(given).cautions().subList(0, 2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"weighed", "conventional"})
    void theTiersOfTheTenStories(String rules) {
        SampleReview review = new SampleReview(rules);
        assertStays(review, "Itzel", Tier.ON_LEVEL, Verdict.STAY);
        assertStays(review, "Linh", Tier.ON_LEVEL, Verdict.STAY);
        assertStays(review, "Oleksandr", Tier.SUPPORT, Verdict.NOT_ENOUGH);
        assertStays(review, "Amadou", Tier.SUPPORT, Verdict.STAY);
        assertEquals(Tier.ON_LEVEL, review.of("Tane").suggested(), "one look in three weeks moves nobody");
        assertStays(review, "Noor", Tier.ON_LEVEL, Verdict.STAY);
        assertStays(review, "Marisol", Tier.SUPPORT, Verdict.STAY);
        assertStays(review, "Yusuf", Tier.ON_LEVEL, Verdict.NOT_ENOUGH);
        assertFalse(review.of("Kwabena").suggested() == Tier.EXTENSION, "not on the check alone");
        assertEquals(Tier.EXTENSION, review.of("Devika").suggested());
        assertEquals(Tier.SUPPORT, review.of("Ruby").suggested());
        assertEquals(Tier.ON_LEVEL, review.of("Tomasz").suggested());
    }

    /** The sample opens on any day of the week after its last looks: days without a look must move nobody. */
    @ParameterizedTest
    @ValueSource(strings = {"weighed", "conventional"})
    void noNewMoveComesFromDaysWithoutALook(String rules) {
        ClassReview then = new SampleReview(rules).review;
        for (int later = 1; later <= 6; later++) {
            for (Suggestion said : new SampleReview(rules, later).review.suggestions()) {
                Suggestion before = then.of(said.child()).orElseThrow();
                assertTrue(said.suggested() == said.current() || said.suggested() == before.suggested(),
                        said.child() + " moves to " + said.suggested() + " after " + later + " days of silence at "
                                + said.chance());
            }
        }
    }

    private static void assertStays(SampleReview review, String given, Tier tier, Verdict verdict) {
        Suggestion said = review.of(given);
        assertEquals(tier, said.current(), given);
        assertEquals(tier, said.suggested(), given);
        assertEquals(verdict, said.verdict(), given);
    }

    @Test
    void itzelIsAtLeastAtThreeAndTheCubesAreToBeHidden() {
        assertTrue(says(
                "Itzel", "T05, T07 and T08: at least step 3. No look without cubes yet: hide the cubes twice."));
        Details details = DEFAULT.details("Itzel");
        assertTrue(details.settle().isPresent(), "a few looks without cubes settle it");
        assertTrue(DEFAULT.english.ask(details).startsWith("Next at the table: T05 with 13, cubes hidden."));
    }

    @Test
    void kwabenasLooksAndCheckTellDifferentThings() {
        assertTrue(says(
                "Kwabena",
                "Unit check and looks tell different things: 13 of 15 items right, 2 of 10 days at the expected"
                        + " step."));
        assertTrue(firstTwo("Kwabena").contains(Caution.ONE_CHECK_MOVES_NOBODY));
    }

    @Test
    void linhShowsStepFourAndMayShowWhatIsAbove() {
        assertTrue(says("Linh", "T05: step 4 on 4 days; step 5 was never seen. Accept showing or drawing"));
        assertEquals(Caution.WAYS_OF_SHOWING, DEFAULT.of("Linh").cautions().getFirst());
    }

    @Test
    void oleksandrKeepsHisHelpUntilAFreshLook() {
        assertTrue(DEFAULT.reason("Oleksandr")
                .startsWith("Not seen since April 16. Help goes on. One fresh look on T05."));
        assertEquals(Caution.WAITING_IS_NO_REASON, DEFAULT.of("Oleksandr").cautions().getFirst());
    }

    @Test
    void amadousHelpWasNotGivenAsPlanned() {
        assertTrue(DEFAULT.reason("Amadou")
                .contains("Help was not given as planned: 4 of 10 sessions, 5 missed by the school, 1 by absence."
                        + " Mend the schedule; more help stays open."));
        assertEquals(Caution.WAITING_IS_NO_REASON, DEFAULT.of("Amadou").cautions().getFirst());
    }

    @Test
    void devikaIsReadyForMoreAndMirrorWritingIsNotCounted() {
        assertEquals(
                "Ready for more in T05, T07 and T08. Look at T06: step 2, expected 3. Mirror writing is not counted.",
                DEFAULT.english.notes(DEFAULT.of("Devika")).getFirst());
    }

    @Test
    void taneIsHardlySeen() {
        assertTrue(DEFAULT.reason("Tane")
                .contains("Hardly seen: 1 look in 15 school days. First at the table on the next school day."));
    }

    @Test
    void noorIsSeenDifferentlyByTwoAdultsOnTwoKindsOfNumber() {
        assertTrue(says(
                "Noor",
                "teacher@sample step 4 (16, 17), Mr. Ferro (aide) step 1 (11, 12). Two kinds of number: watch one 12"
                        + " together."));
        assertEquals(Caution.OBSERVERS_DIFFER, DEFAULT.of("Noor").cautions().getFirst());
    }

    @Test
    void marisolGrowsAndTheRequestIsOpen() {
        String reason = DEFAULT.reason("Marisol");
        assertTrue(reason.contains("The request for an evaluation of May 5 is open: answer it. Nothing here is a reason"
                + " to wait."));
        assertTrue(reason.contains("T05: growing (steps 1, 1, 2, 2 and 3), short of the expected 4."));
        assertEquals(Caution.WAITING_IS_NO_REASON, DEFAULT.of("Marisol").cautions().getFirst());
    }

    @Test
    void yusufIsProvisional() {
        String reason = DEFAULT.reason("Yusuf");
        assertTrue(reason.contains("2 more days"), reason);
        assertTrue(reason.contains("New since May 4, so provisional: 3 looks on 1 day; 2 more did not count: sit apart"
                + " next time."), reason);
    }

    @Test
    void afterTheLostWeekTheLessonComesFirst() {
        LocalDate day = LocalDate.of(2026, 4, 29);
        List<ChildState> states = DEFAULT.states.stream()
                .map(s -> ChildState.start(s.child()))
                .toList();
        ClassReview review = new Reviewer(
                        DEFAULT.setting, SampleClass.looks(), RuleFile.shipped(RuleFile.DEFAULT), Parameters.shipped())
                .review(states, day);
        ClassDip dip = review.dips().stream()
                .filter(d -> "T08".equals(d.skill()))
                .findFirst()
                .orElseThrow();
        assertTrue(dip.children() >= 14, dip.toString());
        assertEquals(
                dip.children() + " of the " + dip.of() + " seen on T08 fall short there: look at the lesson first.",
                DEFAULT.english.dip(dip));
        long told = review.suggestions().stream()
                .filter(s -> s.notes().stream().anyMatch(Note.ClassDip.class::isInstance))
                .count();
        assertTrue(told >= dip.children());
        assertEquals(states.size(), review.suggestions().size(), "nobody is hidden");
    }

    @Test
    void aReasonIsReadInTenSeconds() {
        for (Language language : Language.values()) {
            SuggestionWording words = new SuggestionWording(language, DEFAULT.setting.progression());
            for (Suggestion said : DEFAULT.review.suggestions()) {
                String reason = words.reason(said);
                int count = reason.split("\\s+").length;
                assertTrue(count >= 4 && count <= 50, count + " words: " + reason);
            }
        }
    }
}
