package org.stepwell.pacing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.core.check.Coverage;
import org.stepwell.core.check.LookAgain;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.LessonChoice.Choice;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=lessons"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext
class LessonServiceTest {
    private static final ZoneId ZONE = ZoneId.of("America/Chicago");

    @Autowired
    private LessonService lessons;
    @Autowired
    private UnitReadiness readiness;
    @Autowired
    private PacingService pacing;
    @Autowired
    private ObservationService observations;
    @Autowired
    private RosterService roster;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    @Autowired
    private Clock clock;
    private UUID room;
    private List<ChildRow> children;
    private LocalDate day;
    private final SchoolCalendar calendar = new SchoolCalendar(List.of());

    /** Each test starts a unit of its own, which is the one in hand from then on. */
    @BeforeEach
    void startsAUnit() {
        as("teacher@sample");
        room = roster.classes().getFirst().classId();
        children = roster.children(room);
        pacing.importCalendar(room, List.of(new SchoolCalendar.Break(LocalDate.of(2001, 1, 1),
                LocalDate.of(2001, 1, 1), "none that matters")));
        LocalDate today = LocalDate.now(clock.withZone(ZONE));
        day = calendar.isSchoolDay(today) ? today : calendar.minusSchoolDays(today, 1);
        UUID unit = pacing.startUnit(room, "tens-and-ones", "Lessons", day);
        pacing.importPacing(room, unit, List.of(row("T05", 0, 3), row("T06", 4, 3), row("T07", 9, 4)));
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
                        signIn, ZoneId.of(row.getString(3)), row.getBoolean(4))).single()));
        SecurityContextHolder.getContext().setAuthentication(
                UsernamePasswordAuthenticationToken.authenticated(adult, null, List.of()));
    }

    private PacingRow row(String skill, int after, int step) {
        return new PacingRow(skill, day, after == 0 ? day : calendar.plusSchoolDays(day, after), step);
    }

    private static Lesson lesson(int position, String title, int days, String... skills) {
        return new Lesson(UUID.randomUUID(), 0, position, title, List.of(skills), null, "cubes", "Why ten?", days);
    }

    private UnitPlan plan() {
        return lessons.plan(room).orElseThrow();
    }

    @Test
    void theLessonInHandIsTheOneTheUnitScreenShows() {
        assertThat(lessons.inHand(room)).isEmpty();
        Lesson bars = lesson(1, "Bars and cubes", 2, "T06", "T05");
        lessons.save(room, List.of(bars, lesson(2, "Decades", 2, "T07")));
        assertThat(lessons.inHand(room)).map(Lesson::title).contains("Bars and cubes");
        lessons.choose(room, Choice.MOVE_ON, List.of());
        assertThat(lessons.inHand(room).map(Lesson::lessonId)).contains(plan().inHand().lessonId());
        as("specialist@sample");
        assertThat(lessons.inHand(room)).as("told to whoever shares children of the class").isPresent();
    }

    private void look(int child, String skill, int step, Help help) {
        observations.record(List.of(new Look(UUID.randomUUID(), clock.instant().atZone(ZONE).toOffsetDateTime()
                .withYear(day.getYear()).withMonth(1).withDayOfMonth(1).with(day), children.get(child).schoolKey(),
                skill, "17", step, help, Kind.TABLE, "teacher@sample", Set.of(), null, null, false, null)), true);
    }

    private LocalDate due(String skill) {
        return plan().unit().pacing().rows().stream().filter(r -> r.skill().equals(skill)).findFirst().orElseThrow()
                .due();
    }

    @Test
    void saysWhoHasItWhoNotYetAndWhoWasNotSeen() {
        lessons.save(room, List.of(lesson(1, "Build teens", 2, "T05")));
        look(0, "T05", 3, Help.NONE);
        look(1, "T05", 2, Help.NONE);
        UnitPlan plan = plan();
        assertThat(plan.inHand().title()).isEqualTo("Build teens");
        assertThat(plan.steps()).containsExactly(Map.entry("T05", 3));
        assertThat(plan.standing().has()).contains(children.get(0).schoolKey())
                .doesNotContain(children.get(1).schoolKey());
        assertThat(plan.standing().notYet()).containsExactly(children.get(1).schoolKey());
        assertThat(plan.standing().notSeen()).contains(children.get(2).schoolKey())
                .hasSize(children.size() - plan.standing().share().of());
    }

    @Test
    void anotherDayWithinThePlanMovesNothingAndBeyondItOneDay() {
        lessons.save(room, List.of(lesson(1, "Short", 1, "T05"), lesson(2, "Next", 2, "T06")));
        LocalDate t06 = due("T06");
        LocalDate end = plan().end().early();
        lessons.choose(room, Choice.ANOTHER_DAY, List.of());
        assertThat(due("T05")).as("what is due already stays").isEqualTo(day);
        assertThat(due("T06")).isEqualTo(calendar.plusSchoolDays(t06, 1));
        assertThat(plan().end().early()).isEqualTo(calendar.plusSchoolDays(end, 1));
        assertThat(plan().inHand().title()).isEqualTo("Short");
        assertThat(plan().chosenToday()).get().satisfies(c -> assertThat(c.moved()).isEqualTo(1));
    }

    @Test
    void choosingAgainTheSameDayTakesBackWhatTheFirstChoiceMoved() {
        lessons.save(room, List.of(lesson(1, "Short", 1, "T05"), lesson(2, "Next", 2, "T06")));
        List<PacingRow> before = plan().unit().pacing().rows();
        lessons.choose(room, Choice.ANOTHER_DAY, List.of());
        lessons.choose(room, Choice.ANOTHER_DAY, List.of());
        lessons.choose(room, Choice.MOVE_ON, List.of());
        assertThat(plan().unit().pacing().rows()).isEqualTo(before);
        assertThat(plan().choices()).hasSize(1);
        assertThat(plan().done(plan().lessons().getFirst().lessonId())).isTrue();
    }

    @Test
    void movingOnBeforeThePlanIsUsedUpBringsTheDatesNearer() {
        lessons.save(room, List.of(lesson(1, "Long", 3, "T05"), lesson(2, "Next", 1, "T06")));
        LocalDate t07 = due("T07");
        lessons.choose(room, Choice.MOVE_ON, List.of());
        assertThat(due("T07")).isEqualTo(calendar.minusSchoolDays(t07, 2));
        assertThat(plan().end().early()).isEqualTo(calendar.plusSchoolDays(day, 1));
    }

    @Test
    void movingOnAndShowingAgainMakesTasksThatALookEnds() {
        lessons.save(room, List.of(lesson(1, "Build teens", 1, "T05", "T06")));
        assertThatThrownBy(() -> lessons.choose(room, Choice.MOVE_ON_SHOW_AGAIN, List.of()))
                .hasMessageContaining("at least one child");
        UUID child = children.get(3).childId();
        lessons.choose(room, Choice.MOVE_ON_SHOW_AGAIN, List.of(child));
        lessons.choose(room, Choice.MOVE_ON_SHOW_AGAIN, List.of(child));
        assertThat(lessons.openTasks(room)).filteredOn(t -> t.childId().equals(child)).extracting(TableTask::skill)
                .containsExactlyInAnyOrder("T05", "T06");
        look(3, "T06", 3, Help.NONE);
        assertThat(lessons.openTasks(room)).filteredOn(t -> t.childId().equals(child)).extracting(TableTask::skill)
                .containsExactly("T05");
    }

    @Test
    void aLessonAnotherAdultChangedIsNotOverwritten() {
        Lesson made = lesson(1, "First", 1, "T05");
        lessons.save(room, List.of(made, lesson(2, "Second", 1, "T06")));
        Lesson seen = plan().lessons().getFirst();
        as("coteacher@sample");
        lessons.save(room, List.of(new Lesson(seen.lessonId(), seen.number(), 1, "Theirs", List.of("T05"), 4, "", "",
                2)));
        as("teacher@sample");
        assertThatThrownBy(() -> lessons.save(room, List.of(seen))).hasMessageContaining("meanwhile");
        assertThat(plan().lessons()).extracting(Lesson::title).containsExactly("Theirs", "Second");
        lessons.save(room, List.of(plan().lessons().get(1).at(0 + 1), plan().lessons().get(0).at(2)));
        assertThat(plan().lessons()).extracting(Lesson::title).containsExactly("Second", "Theirs");
        lessons.remove(room, plan().lessons().getFirst());
        assertThat(plan().lessons()).extracting(Lesson::title).containsExactly("Theirs");
        assertThat(plan().steps()).containsEntry("T05", 4);
    }

    @Test
    void writesLessonsFromTheDatesThatAreToCome() {
        assertThat(lessons.fromDates(room)).isEqualTo(2);
        assertThat(plan().lessons()).extracting(Lesson::days).containsExactly(4, 5);
        assertThat(plan().lessons()).extracting(l -> l.skills().getFirst()).containsExactly("T06", "T07");
        assertThat(plan().end().early()).isEqualTo(calendar.plusSchoolDays(day, 8));
    }

    @Test
    void readsWhatTheUnitBuildsOnWithItsAge() {
        Map<ChildRow, List<LookAgain>> all = readiness.prerequisites(room);
        assertThat(all).hasSize(children.size());
        assertThat(all.values()).allSatisfy(needs -> assertThat(needs).extracting(LookAgain::skill)
                .contains("T04").doesNotContain("T05", "T06", "T07"));
        assertThat(all.values().stream().flatMap(List::stream).filter(LookAgain::worthALook)
                .filter(n -> n.says() != LookAgain.Says.NEVER)).allSatisfy(n -> assertThat(n.lastSeen()).isNotNull());
        List<TableTask> tasks = all.entrySet().stream().flatMap(e -> e.getValue().stream()
                .filter(LookAgain::worthALook).map(n -> new TableTask(e.getKey().childId(), n.skill(),
                        TableTask.Why.LOOK_AGAIN, day))).toList();
        int added = lessons.addTasks(room, tasks);
        assertThat(lessons.addTasks(room, tasks)).as("open ones are not doubled").isZero();
        assertThat(lessons.openTasks(room)).hasSizeGreaterThanOrEqualTo(added);
    }

    @Test
    void countsLooksOfEverybodyAlsoOfThoseNobodySaw() {
        Map<ChildRow, Coverage> before = readiness.coverage(room, day, day);
        look(5, "T07", 3, Help.CUBES);
        Map<ChildRow, Coverage> after = readiness.coverage(room, day, day);
        assertThat(after).hasSize(children.size());
        assertThat(after.get(children.get(5)).looks()).isEqualTo(before.get(children.get(5)).looks() + 1);
        assertThat(after.get(children.get(5)).byAdult()).containsKey("teacher@sample");
    }

    @Test
    void nobodyFromOutsideTheClassPlansIt() {
        as("specialist@sample");
        assertThatThrownBy(() -> lessons.plan(room)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> readiness.prerequisites(room)).isInstanceOf(NotVisible.class);
        assertThatThrownBy(() -> lessons.addTasks(room, List.of())).isInstanceOf(NotVisible.class);
        assertThat(lessons.openTasks(room)).isEmpty();
    }
}
