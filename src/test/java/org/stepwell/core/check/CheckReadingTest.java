package org.stepwell.core.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.stepwell.core.evidence.LookMaker.look;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.LookMaker;
import org.stepwell.core.progression.Progression;

class CheckReadingTest {
    private static final Progression PLAIN = new Progression("plain", List.of(), List.of());

    private static List<CheckItem> items(String skill, int step, int count) {
        return IntStream.rangeClosed(1, count).mapToObj(i -> new CheckItem("i%02d".formatted(i), skill, step, "", ""))
                .toList();
    }

    private static Map<String, Mark> marks(String signs) {
        Map<String, Mark> marks = new LinkedHashMap<>();
        for (int i = 0; i < signs.length(); i++) {
            Mark mark = switch (signs.charAt(i)) {
                case '1' -> Mark.RIGHT;
                case '0' -> Mark.WRONG;
                case 'h' -> Mark.HALF;
                case 'n' -> Mark.NOT_REACHED;
                default -> Mark.CLEARED;
            };
            marks.put("i%02d".formatted(i + 1), mark);
        }
        return marks;
    }

    private static SkillResult result(String signs) {
        return SkillResult.of(items("T05", 3, signs.length()), marks(signs)).getFirst();
    }

    @Test
    void saysNothingAboutASkillBelowThreeAnsweredItems() {
        assertThat(result("11").says()).isEqualTo(SkillResult.Says.TOO_FEW);
        assertThat(result("11n n").says()).isEqualTo(SkillResult.Says.TOO_FEW);
        assertThat(result("111").says()).isEqualTo(SkillResult.Says.SHOWN);
    }

    @Test
    void leavesAnItemNotReachedOutOfTheShare() {
        SkillResult result = result("110nn");
        assertThat(result.share()).isEqualTo(new Share(2, 3));
        assertThat(result.items()).isEqualTo(5);
        assertThat(result.says()).isEqualTo(SkillResult.Says.PARTLY);
        assertThat(result("11000").says()).isEqualTo(SkillResult.Says.AGAIN);
    }

    @Test
    void countsAHalfAsHalfInWhatIsSaidAndAsNoRightOneInTheInterval() {
        assertThat(result("11111h0000").says()).isEqualTo(SkillResult.Says.PARTLY);
        assertThat(result("1hh0").says()).isEqualTo(SkillResult.Says.AGAIN);
        assertThat(result("11h").share()).isEqualTo(new Share(2, 3));
        assertThat(result("1111h").says()).isEqualTo(SkillResult.Says.SHOWN);
    }

    private static Optional<AgainstTable> against(String signs, int step, LookMaker... looks) {
        List<CountedLook> counted = Stream.of(looks).map(l -> EffectiveLooks.counted(l.make(), PLAIN)).toList();
        return AgainstTable.of("T05", items("T05", step, signs.length()), marks(signs), counted);
    }

    @Test
    void flagsACheckThatSaysMoreThanWasSeen() {
        AgainstTable apart = against("1110", 4, look("A", "T05", "2026-03-02", 1), look("A", "T05", "2026-03-03", 2),
                look("A", "T05", "2026-03-05", 1)).orElseThrow();
        assertThat(apart.checkSaysMore()).isTrue();
        assertThat(apart.right()).isEqualTo(3);
        assertThat(apart.meeting()).isZero();
        assertThat(apart.days()).isEqualTo(3);
    }

    @Test
    void flagsACheckThatSaysLessThanWasSeen() {
        assertThat(against("1000", 4, look("A", "T05", "2026-03-02", 4), look("A", "T05", "2026-03-03", 5))
                .orElseThrow().checkSaysMore()).isFalse();
    }

    @Test
    void flagsNothingWhereEitherIsTooLittleOrTheyAgree() {
        assertThat(against("00", 4, look("A", "T05", "2026-03-02", 4), look("A", "T05", "2026-03-03", 4))).isEmpty();
        assertThat(against("000", 4, look("A", "T05", "2026-03-02", 4))).isEmpty();
        assertThat(against("1110", 4, look("A", "T05", "2026-03-02", 4), look("A", "T05", "2026-03-03", 4)))
                .isEmpty();
        assertThat(against("111", 4, look("A", "T05", "2026-03-02", 3).help(Help.CUBES),
                look("A", "T05", "2026-03-03", 3).help(Help.CUBES))).as("objects out hide, they do not deny").isEmpty();
        assertThat(against("000", 4, look("A", "T05", "2026-03-02", 4).kind(Kind.UNIT_CHECK),
                look("A", "T05", "2026-03-03", 4).kind(Kind.UNIT_CHECK))).as("a check is no look").isEmpty();
    }

    @Test
    void warnsOfABlueprintThatCannotBearAStatement() {
        List<CheckItem> few = Stream.concat(items("T05", 3, 3).stream(), Stream.of(
                new CheckItem("i10", "T04", 3, "", ""), new CheckItem("i11", "T09", 3, "", ""))).toList();
        assertThat(BlueprintNote.of(few, Set.of("T04", "T05", "T06"))).containsExactlyInAnyOrder(
                new BlueprintNote(BlueprintNote.Kind.TOO_FEW_FOR_A_STATEMENT, "T04", 1),
                new BlueprintNote(BlueprintNote.Kind.TOO_FEW_FOR_A_STATEMENT, "T09", 1),
                new BlueprintNote(BlueprintNote.Kind.NOT_IN_THE_UNIT, "T09", 1),
                new BlueprintNote(BlueprintNote.Kind.NOT_ASKED, "T06", 0));
    }

    @Test
    void proposesAboutTwentyItemsWithThreeForEverySkill() {
        for (int skills = 1; skills <= 8; skills++) {
            Map<String, Integer> steps = new LinkedHashMap<>();
            IntStream.range(0, skills).forEach(i -> steps.put("T0" + i, 3));
            List<CheckItem> items = BlueprintNote.proposal(steps);
            assertThat(items.size()).isEqualTo(Math.max(20, 3 * skills));
            assertThat(items.stream().map(CheckItem::code).distinct()).hasSameSizeAs(items);
            assertThat(BlueprintNote.of(items, steps.keySet())).isEmpty();
        }
        assertThat(BlueprintNote.proposal(Map.of())).isEmpty();
    }

    @Test
    void refusesAnItemTheStoreCouldNotKeep() {
        assertThatThrownBy(() -> new CheckItem("1", "T05", 3, "", "")).hasMessageContaining("i01");
        assertThatThrownBy(() -> new CheckItem("i01", " ", 3, "", "")).hasMessageContaining("skill");
        assertThatThrownBy(() -> new CheckItem("i01", "T05", 6, "", "")).hasMessageContaining("1-5");
        assertThatThrownBy(() -> Mark.of("maybe")).hasMessageContaining("not_reached");
    }

    /** An r of .3 among 22 children: -.14 to .64, by direct formula. */
    @Test
    void saysHowRoughACorrelationOfAClassIs() {
        assertThat(RoughCorrelation.of(.3, 22).low()).isCloseTo(-.14, within(.005));
        assertThat(RoughCorrelation.of(.3, 22).high()).isCloseTo(.64, within(.005));
        assertThatThrownBy(() -> RoughCorrelation.of(1, 22)).hasMessageContaining("no interval");
    }

    @Test
    void looksAtItemsOnlyWhereAClassIsLargeEnough() {
        ItemReport.ItemLine odd = new ItemReport.ItemLine("i01", "T05", .2, -.1, null, .1, 8);
        assertThat(ItemFlag.of(odd, 22)).containsExactly(ItemFlag.HARD, ItemFlag.FLAT, ItemFlag.AGAINST_THE_REST,
                ItemFlag.LATE);
        assertThat(ItemFlag.of(odd, 9)).isEmpty();
        assertThat(ItemFlag.of(new ItemReport.ItemLine("i01", "T05", .95, null, null, 0.0, 0), 22))
                .containsExactly(ItemFlag.EASY);
    }

    @Test
    void countsLooksOfTheWeekByDaySkillAndAdultAndNoCheckItems() {
        List<CountedLook> looks = Stream.of(look("A", "T05", "2026-02-27", 3).by("b"),
                look("A", "T05", "2026-03-02", 3).by("a"), look("A", "T06", "2026-03-02", 3).by("b"),
                look("A", "T05", "2026-03-04", 3).by("a"), look("A", "T05", "2026-03-05", 3).kind(Kind.UNIT_CHECK),
                look("A", "T05", "2026-03-09", 3).by("a")).map(l -> EffectiveLooks.counted(l.make(), PLAIN)).toList();
        Coverage week = Coverage.of("A", looks, LocalDate.of(2026, 3, 2), LocalDate.of(2026, 3, 6));
        assertThat(week.looks()).isEqualTo(3);
        assertThat(week.days()).isEqualTo(2);
        assertThat(week.bySkill()).containsExactly(Map.entry("T05", 2), Map.entry("T06", 1));
        assertThat(week.byAdult()).containsExactly(Map.entry("a", 2), Map.entry("b", 1));
        assertThat(week.last()).isEqualTo(LocalDate.of(2026, 3, 4));
    }

    @Test
    void sortsAClassByWhatWasSeenSinceTheLessonBeganAndNobodyBySilence() {
        Map<String, List<CountedLook>> looks = new LinkedHashMap<>();
        Stream.of(look("has", "T05", "2026-03-03", 1), look("has", "T05", "2026-03-04", 4),
                look("has", "T06", "2026-03-04", 3), look("below", "T05", "2026-03-04", 2),
                look("half", "T05", "2026-03-04", 4), look("cubes", "T05", "2026-03-04", 3).help(Help.CUBES),
                look("old", "T05", "2026-02-04", 4), look("old", "T06", "2026-02-04", 4)).map(LookMaker::make)
                .forEach(l -> looks.computeIfAbsent(l.child() + l.skill(), k -> new java.util.ArrayList<>())
                        .add(EffectiveLooks.counted(l, PLAIN)));
        LessonStanding standing = LessonStanding.of(List.of("has", "below", "half", "cubes", "old", "never"),
                Map.of("T05", 4, "T06", 3), LocalDate.of(2026, 3, 2),
                (child, skill) -> looks.getOrDefault(child + skill, List.of()));
        assertThat(standing.has()).containsExactly("has");
        assertThat(standing.notYet()).containsExactly("below");
        assertThat(standing.hidden()).containsExactly("cubes");
        assertThat(standing.notSeen()).containsExactly("half", "old", "never");
        assertThat(standing.share()).isEqualTo(new Share(1, 2));
    }
}
