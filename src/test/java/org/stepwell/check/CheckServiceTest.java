package org.stepwell.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.check.CheckService.Marked;
import org.stepwell.check.CheckService.Tap;
import org.stepwell.core.check.BlueprintNote;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.Mark;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = "STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests")
@Import(TestDatabase.InSpring.class)
class CheckServiceTest {
    @Autowired
    private CheckService checks;
    @Autowired
    private CheckReport reports;
    @Autowired
    private CheckFiles files;
    @Autowired
    private ObservationService observations;
    @Autowired
    private ProgressionService progressions;
    @Autowired
    private RosterService roster;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    private UUID room;
    private List<ChildRow> children;
    private LocalDate today;

    @BeforeEach
    void signsIn() {
        as("teacher@sample");
        room = roster.classes().getFirst().classId();
        children = roster.children(room);
        today = LocalDate.of(2026, 3, 6);
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    private void as(String signIn) {
        SignedIn adult = DistrictScope.in(1, () -> transaction.execute(status -> jdbc.sql(
                "select a.adult_id, a.school_id, s.time_zone, a.lead from adult a join school s"
                        + " using (district_id, school_id) where a.sign_in = :name").param("name", signIn)
                .query((row, n) -> new SignedIn(1, row.getObject(1, UUID.class), row.getObject(2, UUID.class), signIn,
                        signIn, java.time.ZoneId.of(row.getString(3)), row.getBoolean(4))).single()));
        SecurityContextHolder.getContext().setAuthentication(
                UsernamePasswordAuthenticationToken.authenticated(adult, null, List.of()));
    }

    private static List<CheckItem> items(String skill, int step, int from, int count) {
        return IntStream.range(from, from + count)
                .mapToObj(i -> new CheckItem("i%02d".formatted(i), skill, step, "", "")).toList();
    }

    private UUID check(List<CheckItem> items) {
        return checks.create(room, "Check", today, items);
    }

    private Marked tap(UUID check, int child, String item, int seen, Mark mark) {
        return checks.mark(check, List.of(new Tap(children.get(child).childId(), item, 1, seen, mark, null)))
                .getFirst();
    }

    private List<CountedLook> looks(int child, String skill) {
        return EffectiveLooks.of(observations.ofClass(room), progressions.ofClass(room), LocalDate.of(2099, 1, 1))
                .of(children.get(child).schoolKey(), skill);
    }

    @Test
    void startsFromTheSkillsOfTheUnit() {
        Map<String, Integer> skills = checks.unitSkills(room);
        assertThat(skills).isNotEmpty();
        CheckSheet sheet = checks.sheet(check(BlueprintNote.proposal(skills)));
        assertThat(sheet.items()).hasSizeBetween(20, 24);
        assertThat(sheet.items().stream().map(CheckItem::skill).distinct()).containsExactlyElementsOf(skills.keySet());
        assertThat(sheet.cells()).as("nothing is right until somebody says so").isEmpty();
        assertThat(sheet.children()).hasSizeGreaterThan(20);
    }

    @Test
    void keepsTheCellOfTheOtherAdultWhoWasFirst() {
        UUID check = check(items("T05", 3, 1, 3));
        assertThat(tap(check, 0, "i01", 0, Mark.WRONG).stored()).isTrue();
        as("coteacher@sample");
        Marked second = tap(check, 0, "i01", 0, Mark.RIGHT);
        assertThat(second.stored()).isFalse();
        assertThat(second.cell().mark()).isEqualTo(Mark.WRONG);
        assertThat(second.cell().number()).isEqualTo(1);
        assertThat(tap(check, 0, "i01", 0, Mark.WRONG).stored()).as("the same mark is no quarrel").isTrue();
        assertThat(tap(check, 0, "i01", 1, Mark.RIGHT).stored()).as("seen, then changed").isTrue();
        assertThat(checks.sheet(check).marks(children.getFirst().childId(), 1)).containsEntry("i01", Mark.RIGHT);
    }

    @Test
    void marksTheRestOfOneChildRightAndNothingElse() {
        UUID check = check(items("T05", 3, 1, 4));
        tap(check, 0, "i02", 0, Mark.NOT_REACHED);
        tap(check, 0, "i03", 0, Mark.WRONG);
        tap(check, 0, "i04", 0, Mark.RIGHT);
        tap(check, 0, "i04", 1, Mark.CLEARED);
        checks.restRight(check, children.getFirst().childId(), 1);
        CheckSheet sheet = checks.sheet(check);
        assertThat(sheet.marks(children.getFirst().childId(), 1)).containsEntry("i01", Mark.RIGHT)
                .containsEntry("i02", Mark.NOT_REACHED).containsEntry("i03", Mark.WRONG)
                .containsEntry("i04", Mark.RIGHT);
        assertThat(sheet.marked(1)).isEqualTo(4);
        assertThat(sheet.sat()).hasSize(1);
    }

    @Test
    void aRightItemIsALookAtItsStepAndAWrongOneAtTheStepBelowOnlyOnceItCounts() {
        UUID check = check(List.of(new CheckItem("i01", "X9", 4, "What is 34?", ""),
                new CheckItem("i02", "X9", 4, "", ""), new CheckItem("i03", "X9", 4, "", ""),
                new CheckItem("i04", "X9", 4, "", ""), new CheckItem("i05", "X9", 1, "", "")));
        tap(check, 0, "i01", 0, Mark.RIGHT);
        tap(check, 0, "i02", 0, Mark.WRONG);
        tap(check, 0, "i03", 0, Mark.HALF);
        tap(check, 0, "i04", 0, Mark.NOT_REACHED);
        tap(check, 0, "i05", 0, Mark.WRONG);
        assertThat(looks(0, "X9")).isEmpty();
        checks.count(check);
        assertThat(looks(0, "X9")).extracting(CountedLook::step).containsExactlyInAnyOrder(4, 3, 1);
        assertThat(looks(0, "X9")).allMatch(CountedLook::checkItem).allMatch(l -> l.day().equals(today));
        assertThat(looks(0, "X9")).filteredOn(CountedLook::notYet).singleElement()
                .satisfies(l -> assertThat(l.step()).isEqualTo(1));
        assertThat(looks(0, "X9")).filteredOn(l -> l.step() == 4).singleElement()
                .satisfies(l -> assertThat(l.look().task()).isEqualTo("What is 34?"));
        checks.count(check);
        assertThat(looks(0, "X9")).as("counted twice is counted once").hasSize(3);
    }

    @Test
    void aCorrectionAfterwardsReplacesTheLookOrTakesItBackAndComesAgain() {
        UUID check = check(items("X8", 3, 1, 2));
        tap(check, 1, "i01", 0, Mark.RIGHT);
        checks.count(check);
        tap(check, 1, "i01", 1, Mark.WRONG);
        assertThat(looks(1, "X8")).extracting(CountedLook::step).containsExactly(2);
        tap(check, 1, "i01", 2, Mark.NOT_REACHED);
        assertThat(looks(1, "X8")).isEmpty();
        tap(check, 1, "i01", 3, Mark.RIGHT);
        tap(check, 1, "i02", 0, Mark.RIGHT);
        assertThat(looks(1, "X8")).extracting(CountedLook::step).containsExactly(3, 3);
        checks.saveItems(check, 1, List.of(new CheckItem("i01", "X8", 5, "", "")));
        assertThat(looks(1, "X8")).as("the blueprint says what it tested").extracting(CountedLook::step)
                .containsExactly(5);
        checks.sit(check, children.get(1).childId(), new CheckSitting(false, today.plusDays(4), ""));
        assertThat(looks(1, "X8")).extracting(CountedLook::day).containsExactly(today.plusDays(4));
    }

    @Test
    void anAbsentChildIsOnTheMakeUpListAndNoZero() {
        UUID check = check(items("T05", 3, 1, 3));
        checks.restRight(check, children.get(0).childId(), 1);
        checks.sit(check, children.get(2).childId(), new CheckSitting(true, null, "may point"));
        CheckSheet sheet = checks.sheet(check);
        assertThat(sheet.toMakeUp()).containsExactly(children.get(2));
        assertThat(sheet.responses().rows()).hasSize(1);
        assertThat(reports.results(check).carryOver()).filteredOn(c -> c.child().equals(children.get(2)))
                .singleElement().satisfies(c -> assertThat(c.why()).isEqualTo(CheckResults.Why.ABSENT));
        UUID next = check(items("T05", 3, 1, 3));
        assertThat(checks.earlierAccommodations(next)).containsEntry(children.get(2).childId(), "may point");
        checks.count(check);
        assertThat(checks.sheet(check).toMakeUp()).as("once it counts, all without a mark").hasSize(children.size() - 1);
    }

    @Test
    void aRetakeAsksEachChildOnlyWhatItMissed() {
        List<CheckItem> items = new ArrayList<>(items("T05", 3, 1, 3));
        items.addAll(items("T06", 3, 4, 3));
        items.addAll(items("T07", 3, 7, 3));
        UUID check = check(items);
        assertThatThrownBy(() -> checks.retake(check, "Again", today)).hasMessageContaining("Nobody missed");
        for (String item : List.of("i01", "i02")) {
            tap(check, 0, item, 0, Mark.WRONG);
        }
        for (String item : List.of("i04", "i05", "i06")) {
            tap(check, 1, item, 0, Mark.WRONG);
        }
        checks.restRight(check, children.get(0).childId(), 1);
        checks.restRight(check, children.get(1).childId(), 1);
        CheckSheet again = checks.sheet(checks.retake(check, "Again", today.plusDays(3)));
        assertThat(again.items()).extracting(CheckItem::skill).containsOnly("T05", "T06").hasSize(6);
        assertThat(again.itemsFor(children.get(0).childId())).extracting(CheckItem::skill).containsOnly("T05");
        assertThat(again.itemsFor(children.get(1).childId())).extracting(CheckItem::skill).containsOnly("T06");
        assertThat(again.itemsFor(children.get(2).childId())).isEmpty();
        assertThat(checks.restRight(again.line().checkId(), children.get(0).childId(), 1)).hasSize(3);
    }

    @Test
    void twoEntriesAreComparedCellByCell() {
        UUID check = check(items("T05", 3, 1, 3));
        tap(check, 0, "i01", 0, Mark.WRONG);
        tap(check, 0, "i02", 0, Mark.RIGHT);
        UUID child = children.getFirst().childId();
        checks.mark(check, List.of(new Tap(child, "i01", 2, 0, Mark.RIGHT, null),
                new Tap(child, "i02", 2, 0, Mark.RIGHT, null), new Tap(child, "i03", 2, 0, Mark.HALF, null)));
        assertThat(checks.sheet(check).differences()).extracting(d -> d.item().code()).containsExactly("i01", "i03");
        assertThat(checks.sheet(check).marks(child, 1)).as("the first entry stays").containsEntry("i01", Mark.WRONG);
    }

    @Test
    void aBlueprintSomebodyElseSavedIsNotOverwritten() {
        UUID check = check(items("T05", 3, 1, 3));
        checks.saveItems(check, 1, items("T05", 4, 1, 4));
        assertThatThrownBy(() -> checks.saveItems(check, 1, items("T06", 4, 1, 4)))
                .hasMessageContaining("Somebody else");
        assertThat(checks.sheet(check).items()).isEqualTo(items("T05", 4, 1, 4));
        assertThatThrownBy(() -> check(List.of())).hasMessageContaining("1 to 60");
        List<CheckItem> twice = List.of(items("T05", 3, 1, 1).getFirst(), items("T05", 3, 1, 1).getFirst());
        assertThatThrownBy(() -> check(twice)).hasMessageContaining("i01");
    }

    @Test
    void answersComeOutAndGoInAgain() {
        UUID check = check(items("T05", 3, 1, 4));
        tap(check, 0, "i01", 0, Mark.WRONG);
        tap(check, 0, "i02", 0, Mark.HALF);
        tap(check, 0, "i03", 0, Mark.NOT_REACHED);
        tap(check, 0, "i04", 0, Mark.RIGHT);
        String file = files.export(check);
        assertThat(file).isEqualTo("child,i01,i02,i03,i04\n#skill,T05,T05,T05,T05\n"
                + children.getFirst().schoolKey() + ",0,0.5,,1\n");
        UUID other = check(items("T05", 3, 1, 4));
        CheckFiles.Intake intake = files.read(other, file.getBytes(StandardCharsets.UTF_8));
        assertThat(intake.problems()).isEmpty();
        assertThat(checks.sheet(other).cells()).as("a dry run stores nothing").isEmpty();
        assertThat(files.take(other, intake)).isEqualTo(4);
        assertThat(files.export(other)).isEqualTo(file);
        assertThat(files.read(other, file.getBytes(StandardCharsets.UTF_8)).taps()).isEmpty();
        assertThat(files.read(other, "child,i01,i77\nnobody,1,2\n".getBytes(StandardCharsets.UTF_8)).problems())
                .extracting(Object::toString).anyMatch(p -> p.contains("i77")).anyMatch(p -> p.contains("\"2\""));
    }

    @Test
    void readsErrorsTotalsAndWhatToCarryOver() {
        UUID check = check(items("T06", 4, 1, 4));
        String error = progressions.ofClass(room).phrases().stream().filter(p -> p.skill().equals("T06")
                && p.kind().name().equals("ERROR")).findFirst().orElseThrow().code();
        for (int child : List.of(0, 1)) {
            checks.mark(check, List.of(new Tap(children.get(child).childId(), "i01", 1, 0, Mark.WRONG, error)));
            tap(check, child, "i02", 0, Mark.HALF);
            checks.restRight(check, children.get(child).childId(), 1);
        }
        CheckResults results = reports.results(check);
        assertThat(results.errors()).containsEntry("i01", new CheckResults.Frequent(error, 2));
        assertThat(results.children()).extracting(CheckResults.OneChild::total).containsExactly(2.5, 2.5);
        assertThat(results.report().kr20()).as("half marks").isNull();
        assertThat(results.carryOver()).filteredOn(c -> c.child().equals(children.getFirst())).isNotEmpty();
        UUID first = children.getFirst().childId();
        assertThatThrownBy(() -> checks.mark(check, List.of(new Tap(first, "i01", 1, 1, Mark.WRONG, "not_valid"))))
                .hasMessageContaining("no error tag");
    }

    @Test
    void nobodyFromOutsideTheClassSeesOrMarksACheck() {
        UUID check = check(items("T05", 3, 1, 3));
        as("specialist@sample");
        assertThatThrownBy(() -> checks.sheet(check)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> checks.checks(room)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> tap(check, 0, "i01", 0, Mark.RIGHT)).isInstanceOf(NotVisible.class);
        as("teacher@sample");
        assertThatThrownBy(() -> checks.mark(check, List.of(new Tap(UUID.randomUUID(), "i01", 1, 0, Mark.RIGHT,
                null)))).isInstanceOf(NotVisible.class);
    }

    @Test
    void whatWasMarkedIsNeverChangedOrRemoved() {
        UUID check = check(items("T05", 3, 1, 3));
        tap(check, 0, "i01", 0, Mark.RIGHT);
        for (String sql : Set.of("update check_mark set mark = 'wrong'", "delete from check_mark",
                "update check_item set step = 1", "delete from unit_check")) {
            assertThatThrownBy(() -> DistrictScope.in(1, () -> transaction.execute(status -> jdbc.sql(sql).update())))
                    .isInstanceOf(DataAccessException.class);
        }
    }
}
