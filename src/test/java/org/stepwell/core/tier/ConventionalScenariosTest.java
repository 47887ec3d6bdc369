package org.stepwell.core.tier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.LookMaker;

/** Fifteen situations of a weekly review and what counting rules say. Our own defaults; no published standard. */
class ConventionalScenariosTest {
    private static final List<Integer> THIS_WEEK = List.of(9, 10, 11, 12);
    private static final List<Integer> LAST_WEEK = List.of(2, 3, 4, 5);
    private static final UnaryOperator<LookMaker> EXIT = l -> l.kind(Kind.EXIT_TASK);

    @Test
    void twoDaysAreOneDayShort() {
        Suggestion said = new TwoSkills()
                .days(List.of(11, 12), List.of(4, 4))
                .look("A1", 11, 4, EXIT)
                .look("A2", 11, 4, EXIT)
                .look("A1", 12, 4, l -> l)
                .ask(RuleFile.CONVENTIONAL);
        assertEquals(7, said.looks());
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertTrue(said.missing().contains(new Suggestion.Missing(Measure.DAYS, 1)), said.missing().toString());
    }

    @Test
    void oneKindOfEvidenceNeedsAnother() {
        Suggestion said = new TwoSkills().days(THIS_WEEK, List.of(4, 4, 4, 4)).ask(RuleFile.CONVENTIONAL);
        assertEquals(8, said.looks());
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(List.of(new Suggestion.Missing(Measure.KINDS, 1)), said.missing());
    }

    @Test
    void meetingTwiceInSupportSuggestsLessHelp() {
        Suggestion said = meeting().inSupport(12).ask(RuleFile.CONVENTIONAL);
        assertMove(Tier.SUPPORT, Tier.ON_LEVEL, "less_help", said);
    }

    @Test
    void meetingOnceStays() {
        Suggestion said = new TwoSkills()
                .days(LAST_WEEK, List.of(2, 4, 2, 4), EXIT)
                .days(THIS_WEEK, List.of(3, 4, 4, 5))
                .inSupport(12)
                .ask(RuleFile.CONVENTIONAL);
        assertStay(said);
        Condition meets = condition(said, Measure.SKILLS_MEETING);
        assertEquals(1, meets.held());
        assertEquals(2, meets.required().reviews());
    }

    @Test
    void theMinimumStayHoldsUntilDayEleven() {
        Suggestion said = meeting().inSupport(6).ask(RuleFile.CONVENTIONAL);
        assertStay(said);
        assertEquals(6.0, condition(said, Measure.SCHOOL_DAYS_IN_TIER).measured());
        assertEquals(TwoSkills.march(19), said.notBefore(), "four school days later are ten since the start");
    }

    @Test
    void belowTwiceSuggestsMoreHelpWithTheCautionOnWaiting() {
        Suggestion said = below().dose(9, 10).ask(RuleFile.CONVENTIONAL);
        assertMove(Tier.ON_LEVEL, Tier.SUPPORT, "more_help", said);
        assertEquals(Caution.WAITING_IS_NO_REASON, said.cautions().getFirst());
    }

    @Test
    void belowTwiceWithoutAPlanSuggestsMoreHelp() {
        Suggestion said = below().ask(RuleFile.CONVENTIONAL);
        assertMove(Tier.ON_LEVEL, Tier.SUPPORT, "more_help", said);
        assertNull(condition(said, Measure.SESSIONS_GIVEN).measured(), "a dose without a plan does not apply");
    }

    @Test
    void fewSessionsGivenCannotBeJudged() {
        TwoSkills child = below().dose(4, 10);
        Suggestion said = child.ask(RuleFile.CONVENTIONAL);
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(Tier.ON_LEVEL, said.suggested());
        assertEquals(Suggestion.TOO_FEW_SESSIONS, said.rule());
        assertEquals(Caution.WAITING_IS_NO_REASON, said.cautions().getFirst());
        assertNotNull(child.note(said, Note.HelpNotGiven.class));
    }

    @Test
    void twoDaysUpAndTwoDownAreMixed() {
        Suggestion said = new TwoSkills()
                .days(LAST_WEEK, List.of(4, 4, 4, 4), EXIT)
                .days(THIS_WEEK, List.of(4, 4, 2, 2))
                .ask(RuleFile.CONVENTIONAL);
        assertStay(said);
        assertTrue(said.skills().stream().allMatch(s -> s.signal() == DaySignal.MIXED));
    }

    @Test
    void assistedLooksAreNotValid() {
        Suggestion said = new TwoSkills()
                .days(THIS_WEEK, List.of(5, 5, 5, 5), l -> l.help(Help.PROMPT).kind(Kind.EXIT_TASK))
                .days(THIS_WEEK, List.of(5, 5, 5, 5), l -> l.help(Help.MODELLED))
                .ask(RuleFile.CONVENTIONAL);
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(0, said.looks());
        assertTrue(said.missing().contains(new Suggestion.Missing(Measure.LOOKS, 6)));
    }

    @Test
    void cubesOnEveryDayKeepTheHelpUntilOneLookWithout() {
        TwoSkills child = new TwoSkills()
                .expecting(3)
                .days(LAST_WEEK, List.of(3, 3, 3, 3), l -> l.help(Help.CUBES).kind(Kind.EXIT_TASK))
                .days(THIS_WEEK, List.of(3, 3, 3, 3), l -> l.help(Help.CUBES))
                .inSupport(12);
        Suggestion said = child.ask(RuleFile.CONVENTIONAL);
        assertStay(said);
        assertTrue(condition(said, Measure.SKILLS_MEETING).met());
        assertEquals(0.0, condition(said, Measure.LOOKS_WITHOUT_OBJECTS).measured());
        assertNotNull(child.note(said, Note.CubesHide.class));
    }

    @Test
    void elevenSchoolDaysWithoutALookAskForOneFreshLook() {
        TwoSkills child = new TwoSkills()
                .days(List.of(23 - 28, 24 - 28, 25 - 28, 26 - 28), List.of(2, 2, 2, 2), EXIT)
                .days(List.of(26 - 28), List.of(2));
        Suggestion said = child.ask(RuleFile.CONVENTIONAL);
        assertEquals(11.0, condition(said, Measure.SCHOOL_DAYS_SINCE_LOOK).measured());
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(Suggestion.NOT_SEEN_LATELY, said.rule());
        assertEquals(List.of(new Suggestion.Missing(Measure.LOOKS_SINCE_REVIEW, 1)), said.missing());
        assertInstanceOf(Note.NotSeenLately.class, said.notes().getFirst());
    }

    @Test
    void tenSchoolDaysWithoutALookAreNotTooMany() {
        Suggestion said = new TwoSkills()
                .days(List.of(-4, -3, -2, -1), List.of(2, 2, 2, 2), EXIT)
                .days(List.of(-1), List.of(2))
                .ask(RuleFile.CONVENTIONAL);
        assertEquals(10.0, condition(said, Measure.SCHOOL_DAYS_SINCE_LOOK).measured());
        assertTrue(condition(said, Measure.SCHOOL_DAYS_SINCE_LOOK).met());
    }

    @Test
    void aUnitCheckThatDisagreesIsFlaggedAndDecidesNothing() {
        TwoSkills child = new TwoSkills()
                .days(LAST_WEEK, List.of(4, 4, 4, 4), EXIT)
                .days(List.of(9, 10, 11, 13), List.of(4, 4, 4, 5))
                .inSupport(12);
        for (int item = 0; item < 20; item++) {
            child.look(TwoSkills.SKILLS.get(item % 2), 12, item < 6 ? 4 : 3, l -> l.kind(Kind.UNIT_CHECK));
        }
        Suggestion said = child.ask(RuleFile.CONVENTIONAL);
        assertMove(Tier.SUPPORT, Tier.ON_LEVEL, "less_help", said);
        Note.CheckDisagrees note = (Note.CheckDisagrees)
                Objects.requireNonNull(child.note(said, Note.CheckDisagrees.class));
        assertEquals(6, note.right());
        assertEquals(20, note.items());
        assertTrue(said.cautions().subList(0, 2).contains(Caution.ONE_CHECK_MOVES_NOBODY));
    }

    @Test
    void twoAdultsWhoDifferAreMixedAndFlagged() {
        TwoSkills child = new TwoSkills()
                .days(List.of(5, 6, 9, 10), List.of(4, 4, 4, 4), l -> l.by("A").kind(Kind.EXIT_TASK))
                .days(List.of(11, 12), List.of(1, 1), l -> l.by("B"));
        Suggestion said = child.ask(RuleFile.CONVENTIONAL);
        assertStay(said);
        assertTrue(said.skills().stream().allMatch(s -> s.signal() == DaySignal.MIXED));
        Note.ObserversDiffer note = (Note.ObserversDiffer)
                Objects.requireNonNull(child.note(said, Note.ObserversDiffer.class));
        assertEquals(List.of("A", "B"), List.of(note.a(), note.b()));
        assertEquals(List.of(4, 1), List.of(note.stepA(), note.stepB()));
        assertTrue(said.cautions().contains(Caution.OBSERVERS_DIFFER));
    }

    @Test
    void threeDaysMustAllAgree() {
        Suggestion said = new TwoSkills()
                .days(List.of(9, 10), List.of(4, 4), EXIT)
                .days(List.of(11), List.of(3))
                .ask(RuleFile.CONVENTIONAL);
        assertEquals(6, said.looks());
        assertStay(said);
        assertTrue(said.skills().stream().allMatch(s -> s.signal() == DaySignal.MIXED));
    }

    @Test
    void cubesOnEveryDayAreNeverAReasonForMoreHelp() {
        TwoSkills child = new TwoSkills()
                .days(LAST_WEEK, List.of(3, 3, 3, 3), l -> l.help(Help.CUBES).kind(Kind.EXIT_TASK))
                .days(THIS_WEEK, List.of(3, 3, 3, 3), l -> l.help(Help.CUBES));
        Suggestion said = child.ask(RuleFile.CONVENTIONAL);
        assertStay(said);
        assertTrue(said.skills().stream().allMatch(s -> s.signal() == DaySignal.HIDDEN));
        assertEquals(
                new Note.CubesHide(TwoSkills.SKILLS, 3, 8), child.note(said, Note.CubesHide.class));
    }

    private static TwoSkills meeting() {
        return new TwoSkills()
                .days(LAST_WEEK, List.of(4, 4, 4, 4), EXIT)
                .days(THIS_WEEK, List.of(3, 4, 4, 5));
    }

    private static TwoSkills below() {
        return new TwoSkills()
                .days(LAST_WEEK, List.of(1, 1, 2, 2), EXIT)
                .days(THIS_WEEK, List.of(1, 2, 2, 3));
    }

    private static void assertMove(Tier from, Tier to, String rule, Suggestion said) {
        assertEquals(Verdict.MOVE, said.verdict(), said.toString());
        assertEquals(List.of(from, to), List.of(said.current(), said.suggested()));
        assertEquals(rule, said.rule());
    }

    private static void assertStay(Suggestion said) {
        assertEquals(Verdict.STAY, said.verdict(), said.toString());
        assertEquals(said.current(), said.suggested());
    }

    private static Condition condition(Suggestion said, Measure measure) {
        return said.conditions().stream()
                .filter(c -> c.required().measure() == measure)
                .findFirst()
                .orElseThrow(() -> new AssertionError(measure + " is not among " + said.conditions()));
    }
}
