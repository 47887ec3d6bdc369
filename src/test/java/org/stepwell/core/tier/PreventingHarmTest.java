package org.stepwell.core.tier;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
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

/** What keeps the rules from doing harm, under both shipped files where both are asked. */
class PreventingHarmTest {
    private static final List<Integer> THIS_WEEK = List.of(9, 10, 11, 12);
    private static final List<Integer> LAST_WEEK = List.of(2, 3, 4, 5);
    private static final UnaryOperator<LookMaker> EXIT = l -> l.kind(Kind.EXIT_TASK);

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void objectsNeverCountAsBelow(String rules) {
        Suggestion said = new TwoSkills()
                .days(LAST_WEEK, List.of(3, 3, 3, 3), l -> l.help(Help.CUBES).kind(Kind.EXIT_TASK))
                .days(THIS_WEEK, List.of(3, 3, 3, 3), l -> l.help(Help.CUBES))
                .ask(rules);
        assertEquals(Tier.ON_LEVEL, said.suggested());
        assertEquals(Verdict.STAY, said.verdict());
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void silenceIsNotGrowth(String rules) {
        TwoSkills child = new TwoSkills()
                .days(List.of(-3, -2, -1), List.of(4, 4, 4), EXIT)
                .days(List.of(2, 3, 4, 5), List.of(4, 4, 4, 4))
                .inSupport(20);
        Suggestion said = child.ask(rules);
        assertEquals(Tier.SUPPORT, said.suggested(), "no look since the review of the 6th");
        assertEquals(Tier.ON_LEVEL, child.look("A1", 12, 4, EXIT).ask(rules).suggested());
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void nobodyLosesHelpByBeingAbsent(String rules) {
        Suggestion said = new TwoSkills()
                .days(List.of(-12, -11, -10, -9), List.of(4, 4, 4, 4), EXIT)
                .days(List.of(-5, -4, -3), List.of(5, 5, 5))
                .inSupport(40)
                .ask(rules);
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(Tier.SUPPORT, said.suggested());
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void aWeekOfBreakIsNotKnowing(String rules) {
        TwoSkills child = new TwoSkills()
                .days(List.of(-11, -10, -9, -8), List.of(1, 1, 1, 1), EXIT)
                .days(List.of(-4, -3, -2, -1), List.of(1, 1, 1, 1));
        List<SchoolCalendar.Break> breaks = List.of(
                new SchoolCalendar.Break(TwoSkills.march(2), TwoSkills.march(6), "spring break"));
        ClassSetting setting = new ClassSetting(
                child.setting().progression(), child.setting().pacing(), new SchoolCalendar(breaks));
        LocalDate monday = TwoSkills.march(9);
        Suggestion said = new Reviewer(setting, child.looks(), RuleFile.shipped(rules), Parameters.shipped())
                .review(List.of(ChildState.start(TwoSkills.CHILD)), monday)
                .suggestions()
                .getFirst();
        assertEquals(Suggestion.NOT_SEEN_LATELY, said.rule());
        assertEquals(Tier.ON_LEVEL, said.suggested());
    }

    @Test
    void helpStartsAtOnce() {
        TwoSkills child = new TwoSkills().days(THIS_WEEK, List.of(1, 2, 1, 2));
        Suggestion said = child.reviewer(RuleFile.WEIGHED)
                .review(List.of(ChildState.start(TwoSkills.CHILD)), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
        assertEquals(Verdict.MOVE, said.verdict());
        assertEquals(Tier.SUPPORT, said.suggested(), "the first review, one week after the first look");
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void helpEndsSlowly(String rules) {
        TwoSkills once = new TwoSkills()
                .days(LAST_WEEK, List.of(1, 1, 1, 1), EXIT)
                .days(THIS_WEEK, List.of(4, 5, 4, 5))
                .inSupport(20);
        assertEquals(Tier.SUPPORT, once.ask(rules).suggested(), "good at one review only");
        TwoSkills early = new TwoSkills()
                .days(LAST_WEEK, List.of(4, 4, 4, 4), EXIT)
                .days(THIS_WEEK, List.of(4, 4, 4, 4))
                .inSupport(9);
        Suggestion said = early.ask(rules);
        assertEquals(Tier.SUPPORT, said.suggested(), "nine school days");
        assertEquals(TwoSkills.march(16), said.notBefore());
        assertEquals(Tier.ON_LEVEL, early.inSupport(10).ask(rules).suggested());
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void nobodyLeavesExtensionForOneBadWeek(String rules) {
        TwoSkills child = new TwoSkills()
                .expecting(3)
                .days(List.of(4, 5), List.of(5, 5), EXIT)
                .days(THIS_WEEK, List.of(1, 1, 1, 1))
                .days(THIS_WEEK, List.of(1, 1, 1, 1));
        ChildState inExtension = new ChildState(
                TwoSkills.CHILD, Tier.EXTENSION, null, child.state().reviews(), null, null, List.of());
        Suggestion said = child.reviewer(rules)
                .review(List.of(inExtension), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
        assertEquals(Tier.EXTENSION, said.suggested());
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void thereIsNoTierBeforeTwoSkillsAreDue(String rules) {
        TwoSkills child = new TwoSkills()
                .days(LAST_WEEK, List.of(1, 1, 1, 1), EXIT)
                .days(THIS_WEEK, List.of(1, 1, 1, 1));
        Pacing one = new Pacing(List.of(new PacingRow("A1", null, LocalDate.of(2026, 2, 9), 4)));
        ClassSetting setting =
                new ClassSetting(child.setting().progression(), one, child.setting().calendar(), true);
        Suggestion said = new Reviewer(setting, child.looks(), RuleFile.shipped(rules), Parameters.shipped())
                .review(List.of(child.state()), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(Suggestion.TOO_FEW_DUE, said.rule());
        assertEquals(1.0, said.chance());
        assertEquals(new Note.TooFewDue(1), child.note(said, Note.TooFewDue.class));
    }

    @ParameterizedTest
    @ValueSource(strings = {"conventional", "weighed"})
    void oneNumberIsOneTrick(String rules) {
        List<Look> looks = new ArrayList<>();
        for (int day : List.of(2, 3, 4, 5, 9, 10, 11, 12)) {
            for (String skill : TwoSkills.SKILLS) {
                Look made = LookMaker.look(TwoSkills.CHILD, skill, TwoSkills.march(day), 1).kind(
                        day < 6 ? Kind.TABLE : Kind.EXIT_TASK).make();
                looks.add(asked(made, day % 2 == 0 ? "14" : "16"));
            }
        }
        TwoSkills child = new TwoSkills();
        assertEquals(Tier.ON_LEVEL, reviewed(child, looks, rules).suggested(), "two numbers");
        looks.set(15, asked(looks.get(15), "17"));
        assertEquals(Tier.SUPPORT, reviewed(child, looks, rules).suggested(), "three numbers");
    }

    @Test
    void whereNobodyWritesNumbersDownTheyHoldNothingBack() {
        TwoSkills child = new TwoSkills();
        List<Look> looks = new ArrayList<>();
        for (int day : List.of(11, 12)) {
            Look made = LookMaker.look(TwoSkills.CHILD, "A1", TwoSkills.march(day), 1).make();
            looks.add(asked(made, null));
            looks.add(asked(LookMaker.look(TwoSkills.CHILD, "A2", TwoSkills.march(day), 1).make(), null));
        }
        Suggestion said = reviewed(child, looks.subList(0, 3), RuleFile.WEIGHED);
        assertEquals(Tier.SUPPORT, said.suggested());
        Condition numbers = condition(said, Measure.DIFFERENT_NUMBERS);
        assertNull(numbers.measured());
        assertTrue(numbers.met());
        looks.set(0, asked(looks.get(0), "14"));
        looks.set(1, asked(looks.get(1), "14"));
        looks.set(2, asked(looks.get(2), "14"));
        assertEquals(Tier.ON_LEVEL, reviewed(child, looks.subList(0, 3), RuleFile.WEIGHED).suggested(), "one number");
    }

    @Test
    void helpThatWasNotGivenIsNoReasonForMoreHelp() {
        TwoSkills given = new TwoSkills().days(THIS_WEEK, List.of(1, 2, 1, 2)).dose(8, 10);
        assertEquals(Tier.SUPPORT, given.ask(RuleFile.WEIGHED).suggested());
        TwoSkills missed = new TwoSkills().days(THIS_WEEK, List.of(1, 2, 1, 2)).dose(7, 10);
        Suggestion said = missed.ask(RuleFile.WEIGHED);
        assertEquals(Tier.ON_LEVEL, said.suggested());
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(Suggestion.TOO_FEW_SESSIONS, said.rule());
        assertEquals(Caution.WAITING_IS_NO_REASON, said.cautions().getFirst());
        assertNotNull(missed.note(said, Note.HelpNotGiven.class), "seven of ten is said where it holds a move back");
        TwoSkills fine = new TwoSkills().days(THIS_WEEK, List.of(4, 4, 4, 4)).dose(7, 10);
        assertNull(fine.note(fine.ask(RuleFile.WEIGHED), Note.HelpNotGiven.class));
    }

    @Test
    void silenceNeverOpensDeeperWork() {
        SplittableRandom random = new SplittableRandom(77);
        int drifted = 0;
        int opened = 0;
        for (int i = 0; i < 150; i++) {
            TwoSkills child = new TwoSkills().expecting(2 + i % 2);
            for (int n = 0; n < 4; n++) {
                int step = 3 + random.nextInt(3);
                child.look(TwoSkills.SKILLS.get(n % 2), 9 + random.nextInt(4), step, l -> l);
            }
            Suggestion seen = at(child, 12);
            for (int later = 13; later <= 26; later++) {
                Suggestion silent = at(child, later);
                drifted += seen.chances().extension() < 0.45 && silent.chances().extension() >= 0.45 ? 1 : 0;
                if (silent.suggested() == Tier.EXTENSION) {
                    opened++;
                    assertEquals(Tier.EXTENSION, seen.suggested(), "seed 77, child " + i + ", March " + later);
                }
            }
        }
        assertTrue(drifted > 10, "chances that drifted over the threshold by silence alone: " + drifted);
        assertTrue(opened > 10, "and deeper work opens where the looks say so: " + opened);
    }

    private static Suggestion at(TwoSkills child, int day) {
        return child.reviewer(RuleFile.WEIGHED)
                .review(List.of(ChildState.start(TwoSkills.CHILD)), TwoSkills.march(day))
                .suggestions()
                .getFirst();
    }

    @Test
    void looksAtSkillsThatAreNotDueCountForTheMinimumAndAloneMoveNobody() {
        TwoSkills child = new TwoSkills().look("A1", 10, 1, l -> l);
        assertEquals(Verdict.NOT_ENOUGH, at(child, 13).verdict(), "one look");
        child.look("B9", 11, 1, l -> l);
        assertNotEquals(Verdict.NOT_ENOUGH, at(child, 13).verdict(), "another skill, another day");
        TwoSkills elsewhere = new TwoSkills().look("B9", 10, 1, l -> l).look("B9", 11, 1, l -> l);
        assertEquals(Verdict.NOT_ENOUGH, at(elsewhere, 13).verdict(), "nothing seen of what is due");
    }

    private static Condition condition(Suggestion said, Measure measure) {
        return said.conditions().stream()
                .filter(c -> c.required().measure() == measure)
                .findFirst()
                .orElseThrow();
    }

    private static Suggestion reviewed(TwoSkills child, List<Look> looks, String rules) {
        return new Reviewer(child.setting(), looks, RuleFile.shipped(rules), Parameters.shipped())
                .review(List.of(child.state()), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
    }

    private static Look asked(Look look, @Nullable String task) {
        return new Look(
                look.id(), look.observedAt(), look.child(), look.skill(), task, look.step(), look.help(), look.kind(),
                look.observer(), look.tags(), look.note(), look.replaces(), look.withdrawn(), look.clockOffsetMs());
    }

    @Test
    void aMissedKeystoneIsAReasonForTableTimeWithoutAMove() {
        TwoSkills child = new TwoSkills()
                .look("A1", 9, 2, l -> l).look("A1", 10, 2, l -> l).look("A1", 11, 2, EXIT)
                .look("A2", 9, 4, l -> l).look("A2", 10, 4, l -> l).look("A2", 11, 4, EXIT).look("A2", 12, 4, l -> l);
        List<Progression.Skill> skills = List.of(
                new Progression.Skill("A1", "first", List.of(), List.of()),
                new Progression.Skill("A2", "second", List.of(new Progression.Need(1, "A1", 3)), List.of()),
                new Progression.Skill("A3", "third", List.of(new Progression.Need(1, "A1", 3)), List.of()));
        ClassSetting setting = new ClassSetting(
                new Progression("p", skills, List.of()), child.setting().pacing(), child.setting().calendar(), true);
        Suggestion said = new Reviewer(
                        setting, child.looks(), RuleFile.shipped(RuleFile.WEIGHED), Parameters.shipped())
                .review(List.of(child.state()), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
        assertEquals(Tier.ON_LEVEL, said.suggested());
        assertEquals(
                new Note.KeystoneMissed("A1", 2, 4, List.of("A2", "A3")),
                child.note(said, Note.KeystoneMissed.class));
    }

    @Test
    void moreThanAThirdSuggestedForMoreHelpPointsToTheLessonAndHidesNobody() {
        assertEquals(List.of(), dips(2, 6), "a third is not more than a third");
        assertTrue(dips(3, 6).contains(new ClassDip(null, 3, 6)));
    }

    private static List<ClassDip> dips(int below, int of) {
        List<Look> looks = new ArrayList<>();
        List<ChildState> states = new ArrayList<>();
        for (int c = 0; c < of; c++) {
            String child = "C" + c;
            states.add(ChildState.start(child));
            for (int day : THIS_WEEK) {
                for (String skill : TwoSkills.SKILLS) {
                    looks.add(LookMaker.look(child, skill, TwoSkills.march(day), c < below ? 1 : 4).make());
                }
            }
        }
        ClassReview review = Reviewer.review(
                new TwoSkills().setting(), looks, states, TwoSkills.TODAY, RuleFile.shipped(RuleFile.WEIGHED),
                Parameters.shipped());
        assertEquals(of, review.suggestions().size());
        long moves = review.suggestions().stream().filter(s -> s.verdict() == Verdict.MOVE).count();
        assertEquals(below, moves);
        if (!review.dips().isEmpty()) {
            Suggestion first = review.suggestions().getFirst();
            assertTrue(first.cautions().subList(0, 2).contains(Caution.LESSON_FIRST));
        }
        return review.dips().stream().filter(d -> d.skill() == null).toList();
    }

    @Test
    void aNewChildIsProvisionalUntilEnoughWasSeen() {
        LocalDate joined = TwoSkills.march(9);
        TwoSkills child = new TwoSkills().days(List.of(10), List.of(5)).look("A1", 10, 5, l -> l.tags("not_valid"));
        ChildState state = new ChildState(
                TwoSkills.CHILD, Tier.ON_LEVEL, null, child.state().reviews(), joined, null, List.of());
        Suggestion said = child.reviewer(RuleFile.WEIGHED)
                .review(List.of(state), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
        assertEquals(Verdict.NOT_ENOUGH, said.verdict());
        assertEquals(new Note.Provisional(joined, 2, 1, 1), child.note(said, Note.Provisional.class));
        child.days(List.of(11, 12, 13), List.of(4, 4, 4), EXIT);
        Suggestion enough = child.reviewer(RuleFile.WEIGHED)
                .review(List.of(state), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
        assertNull(child.note(enough, Note.Provisional.class));
    }

    @Test
    void onlyAnAdultRecordsAConcern() {
        TwoSkills child = new TwoSkills()
                .days(LAST_WEEK, List.of(1, 1, 1, 1), EXIT)
                .days(THIS_WEEK, List.of(1, 1, 1, 1))
                .inSupport(30);
        assertNull(child.note(child.ask(RuleFile.WEIGHED), Note.RequestOpen.class));
        ChildState asked = new ChildState(
                TwoSkills.CHILD, Tier.SUPPORT, TwoSkills.march(-20), List.of(), null, null,
                List.of(new ChildState.OpenRequest(ChildState.OpenRequest.Kind.EVALUATION, TwoSkills.march(9))));
        Suggestion said = child.reviewer(RuleFile.WEIGHED)
                .review(List.of(asked), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
        assertNotNull(child.note(said, Note.RequestOpen.class));
        assertEquals(Caution.WAITING_IS_NO_REASON, said.cautions().getFirst());
    }

    @Test
    void everyWaitingVerdictCarriesTheCaution() {
        for (Suggestion said : List.of(
                new TwoSkills().days(List.of(12), List.of(4)).ask(RuleFile.WEIGHED),
                new TwoSkills().ask(RuleFile.WEIGHED),
                new TwoSkills().days(List.of(-6, -5, -4), List.of(4, 4, 4), EXIT).ask(RuleFile.CONVENTIONAL))) {
            assertEquals(Verdict.NOT_ENOUGH, said.verdict());
            assertEquals(Caution.WAITING_IS_NO_REASON, said.cautions().getFirst());
        }
    }

    @Test
    void theBarMovesNotTheChild() {
        TwoSkills child = new TwoSkills()
                .days(LAST_WEEK, List.of(3, 3, 3, 3), EXIT)
                .days(THIS_WEEK, List.of(3, 3, 3, 3));
        LocalDate rose = TwoSkills.march(4);
        List<PacingRow> rows = new ArrayList<>();
        for (String skill : TwoSkills.SKILLS) {
            rows.add(new PacingRow(skill, LocalDate.of(2026, 2, 2), LocalDate.of(2026, 2, 9), 3));
        }
        rows.add(new PacingRow("A1", null, rose, 4));
        ClassSetting setting = new ClassSetting(
                child.setting().progression(), new Pacing(rows), child.setting().calendar(), true);
        Suggestion said = new Reviewer(
                        setting, child.looks(), RuleFile.shipped(RuleFile.WEIGHED), Parameters.shipped())
                .review(List.of(child.state()), TwoSkills.TODAY)
                .suggestions()
                .getFirst();
        assertEquals(
                new Note.BarRose("A1", 3, 4, rose),
                Objects.requireNonNull(child.note(said, Note.BarRose.class)));
    }

    @Test
    void speakingIsNotRequiredToExplain() {
        TwoSkills child = new TwoSkills()
                .expecting(3)
                .days(LAST_WEEK, List.of(4, 4, 4, 4), l -> l.tags("showed").kind(Kind.EXIT_TASK))
                .days(THIS_WEEK, List.of(4, 4, 4, 4), l -> l.tags("drew"));
        Suggestion said = child.ask(RuleFile.WEIGHED);
        assertEquals(new Note.NothingAbove("A1", 4, 8), child.note(said, Note.NothingAbove.class));
        assertTrue(said.cautions().subList(0, 2).contains(Caution.WAYS_OF_SHOWING));
        TwoSkills speaking = new TwoSkills()
                .expecting(3)
                .days(THIS_WEEK, List.of(4, 4, 4, 4), l -> l.tags("said"));
        assertFalse(speaking.ask(RuleFile.WEIGHED).notes().stream().anyMatch(Note.NothingAbove.class::isInstance));
    }
}
