package org.stepwell.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.tier.Tier;

class SampleFilesFitTogetherTest {
    private static final LocalDate UNIT = LocalDate.of(2026, 3, 30);

    private final List<Map<String, String>> roster = SampleClass.rows("roster.csv");
    private final List<Look> looks = SampleClass.looks();
    private final LocalDate anchor = SampleClass.anchor();

    @Test
    void theClassHas23ChildrenWithNamesOfTheirOwnAndTwoSofias() {
        assertEquals(23, roster.size());
        assertEquals(23, column(roster, "child").size());
        Set<String> names = roster.stream()
                .map(r -> r.get("given_name") + " " + r.get("family_name"))
                .collect(Collectors.toSet());
        assertEquals(23, names.size());
        assertEquals(2, roster.stream().filter(r -> r.get("given_name").equals("Sofia")).count());
        assertEquals(22, column(roster, "given_name").size());
    }

    @Test
    void everyLookIsOfAChildThenInTheClassOnASchoolDayUpToTheAnchorDay() {
        Map<String, LocalDate> starts = roster.stream()
                .collect(Collectors.toMap(r -> r.get("child"), r -> LocalDate.parse(r.get("start"))));
        SchoolCalendar calendar = SampleClass.calendar();
        for (Look look : looks) {
            assertFalse(look.day().isBefore(starts.get(look.child())), look.toString());
            assertTrue(calendar.isSchoolDay(look.day()), look.toString());
            assertFalse(look.day().isAfter(anchor), look.toString());
        }
        assertEquals(DayOfWeek.FRIDAY, anchor.getDayOfWeek());
    }

    @Test
    void theLooksCoverEightSchoolWeeksAndLeaveOutTheLostOne() {
        Set<LocalDate> mondays = looks.stream()
                .map(l -> l.day().with(DayOfWeek.MONDAY))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(8, mondays.size());
        assertFalse(mondays.contains(LocalDate.of(2026, 4, 20)));
    }

    @Test
    void everyIdIsOfVersionSevenAndCarriesTheMillisecondsOfItsLook() {
        assertEquals(looks.size(), looks.stream().map(Look::id).distinct().count());
        for (Look look : looks) {
            assertEquals(7, look.id().version());
            assertEquals(2, look.id().variant());
            long millis = look.id().getMostSignificantBits() >>> 16;
            assertEquals(look.observedAt().toEpochSecond(), millis / 1000);
        }
    }

    @Test
    void everyTagIsAPhraseOrErrorOfItsSkillOrASharedOne() {
        Set<String> shared = Set.of(
                "said", "drew", "showed", "home_language", "self_corrected", "copied", "not_yet", "wrong_total",
                "substitute", "from_paper", "written_later", "not_valid");
        Map<String, Integer> steps = new HashMap<>();
        SampleClass.progression().phrases().stream()
                .filter(p -> p.language().equals("en"))
                .forEach(p -> steps.put(p.skill() + " " + p.code(), p.step() == null ? 0 : p.step()));
        for (Look look : looks) {
            for (String tag : look.tags()) {
                if (!shared.contains(tag)) {
                    Integer step = steps.get(look.skill() + " " + tag);
                    assertTrue(step != null && (step == 0 || step.equals(look.step())), tag + " at " + look);
                }
            }
        }
    }

    @Test
    void notesNameNobody() {
        Set<String> names = new HashSet<>(column(roster, "given_name"));
        names.addAll(column(roster, "family_name"));
        for (Look look : looks) {
            if (look.note() != null) {
                assertTrue(names.stream().noneMatch(look.note()::contains), look.note());
            }
        }
    }

    @Test
    void childrenGetBetweenSixAndFifteenLooksOrSoInTheUnit() {
        EffectiveLooks counted = SampleClass.counted(anchor);
        Set<String> seldomSeen = Set.of(SampleClass.child("Tane"), SampleClass.child("Yusuf"));
        for (String child : column(roster, "child")) {
            long own = counted.of(child).stream()
                    .filter(l -> !l.day().isBefore(UNIT) && l.look().kind() != Kind.UNIT_CHECK)
                    .count();
            assertTrue(own <= 20 && (own >= 6 || seldomSeen.contains(child)), child + ": " + own);
        }
    }

    @Test
    void severalKindsHelpsAndAdultsAreInIt() {
        assertEquals(Set.of(Kind.values()), looks.stream().map(Look::kind).collect(Collectors.toSet()));
        assertEquals(4, looks.stream().map(Look::help).distinct().count());
        assertTrue(looks.stream().map(Look::observer).distinct().count() >= 5);
        assertTrue(looks.stream().filter(l -> l.note() != null).count() >= 25);
    }

    @Test
    void afterTheLostWeek14ChildrenAreBelowWhatIsExpectedOnT08AndTwoWeeksLaterMostAreBack() {
        assertEquals(14, belowOnT08(LocalDate.of(2026, 4, 29)));
        assertTrue(belowOnT08(LocalDate.of(2026, 4, 17)) <= 5);
        assertTrue(belowOnT08(LocalDate.of(2026, 5, 6)) <= 5);
    }

    private long belowOnT08(LocalDate day) {
        EffectiveLooks counted = SampleClass.counted(day);
        return counted.children().stream()
                .map(c -> counted.of(c, "T08"))
                .filter(own -> own.stream()
                        .filter(CountedLook::valid)
                        .anyMatch(l -> l.day().equals(day) && l.look().kind() == Kind.EXIT_TASK && l.step() < 3))
                .count();
    }

    @Test
    void aLookWentToTheOtherSofiaAndOneWasWithdrawn() {
        Map<java.util.UUID, Look> byId = looks.stream().collect(Collectors.toMap(Look::id, l -> l));
        List<Look> moved = looks.stream()
                .filter(l -> l.replaces() != null)
                .filter(l -> !byId.get(l.replaces()).child().equals(l.child()))
                .toList();
        assertEquals(1, moved.size());
        Look old = byId.get(moved.getFirst().replaces());
        for (Look look : List.of(old, moved.getFirst())) {
            assertTrue(roster.stream()
                    .anyMatch(r -> r.get("child").equals(look.child()) && r.get("given_name").equals("Sofia")));
        }
        EffectiveLooks counted = SampleClass.counted(anchor);
        assertTrue(counted.of(old.child()).stream().noneMatch(l -> l.look().equals(old)));
        assertTrue(counted.of(moved.getFirst().child()).stream().anyMatch(l -> l.look().equals(moved.getFirst())));
        assertEquals(1, looks.stream().filter(Look::withdrawn).count());
    }

    @Test
    void decisionsDosesConcernsAndGrantsNameChildrenOfTheClass() {
        Set<String> children = column(roster, "child");
        for (String file : List.of("decisions.csv", "dose.csv", "concerns.csv", "grants.csv")) {
            assertTrue(children.containsAll(column(SampleClass.rows(file), "child")), file);
        }
        for (Map<String, String> row : SampleClass.rows("decisions.csv")) {
            assertEquals(row.get("tier"), Tier.of(row.get("tier")).code());
            assertTrue(SampleClass.calendar().isSchoolDay(LocalDate.parse(row.get("as_of"))), row.toString());
        }
    }

    @Test
    void dosesAddUp() {
        for (Map<String, String> row : SampleClass.rows("dose.csv")) {
            assertEquals(
                    Integer.parseInt(row.get("planned")),
                    Integer.parseInt(row.get("given"))
                            + Integer.parseInt(row.get("missed_by_school"))
                            + Integer.parseInt(row.get("missed_by_child")),
                    row.toString());
        }
    }

    @Test
    void theSpecialistSeesAFewChildrenNotNoneAndNotAll() {
        List<Map<String, String>> grants = SampleClass.rows("grants.csv");
        Set<String> adults = column(SampleClass.rows("adults.csv"), "sign_in");
        assertEquals(Set.of("teacher@sample", "coteacher@sample", "specialist@sample", "lead@sample"), adults);
        assertEquals(Set.of("specialist@sample"), column(grants, "adult"));
        assertEquals(4, column(grants, "child").size());
    }

    private static Set<String> column(List<Map<String, String>> rows, String name) {
        return rows.stream().map(r -> r.get(name)).collect(Collectors.toCollection(TreeSet::new));
    }
}
