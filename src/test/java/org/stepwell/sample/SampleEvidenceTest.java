package org.stepwell.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Tags;

/** What the looks of the children written by hand say on the anchor day, before any rule has spoken. */
class SampleEvidenceTest {
    private static final LocalDate UNIT = LocalDate.of(2026, 3, 30);

    private final LocalDate anchor = SampleClass.anchor();
    private final EffectiveLooks counted = SampleClass.counted(anchor);

    @Test
    void fourSkillsAreDueAndTheTeensOneStepHigherThanTheRest() {
        assertEquals(Map.of("T05", 4, "T06", 3, "T07", 3, "T08", 3), SampleClass.pacing().dueOn(anchor));
        assertEquals(UNIT, SampleClass.pacing().unitStart(anchor, SampleClass.calendar()).orElseThrow());
    }

    @Test
    void itzelShowsAtLeastThreeOnFourDaysAndNothingWithoutCubes() {
        List<DayStep> days = days("Itzel", "T05");
        assertEquals(List.of(3, 3, 3, 3), steps(days));
        assertTrue(days.stream().allMatch(d -> d.against(4) == DayStep.Reading.HIDDEN));
        assertTrue(unit("Itzel").stream().allMatch(l -> l.look().help() == Help.CUBES));
    }

    @Test
    void kwabenaCountsAllAndHasNineteenOfTwentyRight() {
        List<CountedLook> check = unit("Kwabena").stream().filter(CountedLook::checkItem).toList();
        assertEquals(20, check.size());
        assertTrue(check.stream().allMatch(l -> l.day().equals(LocalDate.of(2026, 5, 7))));
        List<CountedLook> seen = unit("Kwabena").stream()
                .filter(l -> !l.checkItem() && !l.skill().equals("T06"))
                .toList();
        assertTrue(seen.size() >= 6 && seen.stream().allMatch(l -> l.step() == 1 && !l.slip()));
        Map<String, List<Integer>> shown = check.stream()
                .collect(Collectors.groupingBy(
                        CountedLook::skill, Collectors.mapping(CountedLook::step, Collectors.toList())));
        Map<String, List<Integer>> tested = Map.of(
                "T04", List.of(3, 4), "T05", List.of(3, 3, 4, 4, 4), "T06", List.of(3, 4, 4),
                "T07", List.of(3, 4, 4), "T08", List.of(3, 3, 4, 4));
        tested.forEach((skill, steps) -> assertEquals(steps, shown.get(skill), skill + " all right"));
        assertEquals(List.of(3, 4, 3), shown.get("T11"), "the last item wrong: one step below the 4 it tests");
    }

    @Test
    void linhShowsStepFourAndIsNeverSeenAtFive() {
        List<CountedLook> teens = unit("Linh").stream()
                .filter(l -> l.skill().equals("T05") && !l.day().isBefore(LocalDate.of(2026, 4, 13)))
                .toList();
        assertEquals(4, teens.size());
        assertTrue(teens.stream().allMatch(l -> l.step() == 4 && l.look().tags().contains(Tags.SHOWED)));
        assertTrue(unit("Linh").stream().allMatch(l -> l.step() < 5 && !l.look().tags().contains(Tags.SAID)));
    }

    @Test
    void oleksandrWasLastSeenElevenSchoolDaysAgo() {
        CountedLook last = counted.of(SampleClass.child("Oleksandr")).getLast();
        assertEquals(11, SampleClass.calendar().schoolDaysBetween(last.day(), anchor));
        assertEquals("support", tier("Oleksandr"));
    }

    @Test
    void amadouGrowsSlowlyOnHelpThatWasNotGivenAsPlanned() {
        assertEquals(List.of(1, 2, 2), steps(lastDays("Amadou", "T05", 3)));
        Map<String, String> dose = dose("Amadou");
        assertEquals(
                List.of("10", "4", "5", "1"),
                List.of(
                        dose.get("planned"),
                        dose.get("given"),
                        dose.get("missed_by_school"),
                        dose.get("missed_by_child")));
        assertEquals("support", tier("Amadou"));
    }

    @Test
    void devikaIsAtFiveInThreeSkillsAndWritesInTheMirror() {
        for (String skill : List.of("T05", "T07", "T08")) {
            assertEquals(List.of(5, 5, 5, 5), steps(lastDays("Devika", skill, 4)), skill);
        }
        List<CountedLook> writing = counted.of(SampleClass.child("Devika"), "T06");
        assertTrue(writing.size() >= 3);
        assertTrue(writing.stream()
                .allMatch(l -> l.step() == 2 && l.look().tags().contains("mirror_written")));
    }

    @Test
    void taneWasSeenOnceInThreeSchoolWeeks() {
        LocalDate from = SampleClass.calendar().minusSchoolDays(anchor, 14);
        assertEquals(1, counted.of(SampleClass.child("Tane")).stream()
                .filter(l -> !l.day().isBefore(from))
                .count());
    }

    @Test
    void noorIsSeenDifferentlyByTwoAdultsOnTwoKindsOfNumber() {
        List<DayStep> days = lastDays("Noor", "T05", 4);
        assertEquals(List.of(4, 4, 1, 1), steps(days));
        assertEquals(days.get(0).observers(), days.get(1).observers());
        assertEquals(days.get(2).observers(), days.get(3).observers());
        assertFalse(days.get(1).observers().equals(days.get(2).observers()));
        assertEquals(
                List.of("11", "12"),
                days.subList(2, 4).stream().map(d -> d.looks().getFirst().look().task()).toList());
    }

    @Test
    void marisolGrowsOverFiveSchoolWeeksAndARequestIsOpen() {
        List<DayStep> days = days("Marisol", "T05");
        assertEquals(List.of(1, 1, 2, 2, 3), steps(days));
        assertEquals(5, days.stream().map(d -> d.day().with(java.time.DayOfWeek.MONDAY)).distinct().count());
        assertEquals("support", tier("Marisol"));
        assertEquals(
                List.of("evaluation_request"),
                SampleClass.rows("concerns.csv").stream()
                        .filter(r -> r.get("child").equals(SampleClass.child("Marisol")))
                        .map(r -> r.get("kind"))
                        .toList());
    }

    @Test
    void yusufHasThreeValidLooksOfOneDay() {
        String yusuf = SampleClass.child("Yusuf");
        List<CountedLook> own = counted.of(yusuf);
        assertEquals(3, own.size());
        assertTrue(own.stream().allMatch(l -> l.step() == 5));
        assertEquals(1, own.stream().map(CountedLook::day).distinct().count());
        List<Look> fives = SampleClass.looks().stream()
                .filter(l -> l.child().equals(yusuf) && l.step() != null)
                .toList();
        assertEquals(5, fives.size());
        assertEquals(2, fives.stream().filter(l -> l.tags().contains(Tags.NOT_VALID)).count());
    }

    @Test
    void severalKindsOfEvidenceStandBehindEveryHandWrittenChildWhoWasSeenOften() {
        for (String given : List.of(
                "Itzel", "Kwabena", "Linh", "Oleksandr", "Amadou", "Devika", "Noor", "Marisol", "Ruby", "Tomasz")) {
            Set<Kind> kinds = unit(given).stream().map(l -> l.look().kind()).collect(Collectors.toSet());
            assertTrue(kinds.size() >= 2, given + " " + kinds);
        }
    }

    private List<CountedLook> unit(String given) {
        return counted.of(SampleClass.child(given)).stream()
                .filter(l -> !l.day().isBefore(UNIT))
                .toList();
    }

    private List<DayStep> days(String given, String skill) {
        return counted.days(SampleClass.child(given), skill);
    }

    private List<DayStep> lastDays(String given, String skill, int count) {
        List<DayStep> all = days(given, skill);
        return all.subList(Math.max(0, all.size() - count), all.size());
    }

    private static List<Integer> steps(List<DayStep> days) {
        return days.stream().map(DayStep::step).toList();
    }

    private static String tier(String given) {
        return SampleClass.rows("decisions.csv").stream()
                .filter(r -> r.get("child").equals(SampleClass.child(given)))
                .map(r -> r.get("tier"))
                .reduce((older, newer) -> newer)
                .orElseThrow();
    }

    private static Map<String, String> dose(String given) {
        return SampleClass.rows("dose.csv").stream()
                .filter(r -> r.get("child").equals(SampleClass.child(given)))
                .findFirst()
                .orElseThrow();
    }
}
