package org.stepwell.pacing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.check.LessonStanding;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.pacing.Course;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.pacing.UnitCourse;
import org.stepwell.core.problem.Refused;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.LessonChoice.Choice;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** The lessons of a unit: who has what is taught now, and where the class goes on. The dates follow the real class. */
@Service
@Transactional
public class LessonService {
    private static final int STEP_OF_A_SKILL_WITHOUT_DATES = 3;

    private final LessonStore store;
    private final PacingService pacing;
    private final ObservationService observations;
    private final ProgressionService progressions;
    private final RosterService roster;
    private final Access access;
    private final CurrentAdult current;

    LessonService(LessonStore store, PacingService pacing, ObservationService observations,
            ProgressionService progressions, RosterService roster, Access access, CurrentAdult current) {
        this.store = store;
        this.pacing = pacing;
        this.observations = observations;
        this.progressions = progressions;
        this.roster = roster;
        this.access = access;
        this.current = current;
    }

    /**
     * The unit in hand as it stands; empty when the class has none.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public Optional<UnitPlan> plan(UUID classId) {
        access.requireClass(classId);
        return pacing.unit(classId).map(unit -> plan(classId, unit));
    }

    /**
     * The lesson of the day as the teacher wrote it; empty when no unit runs, no lesson is written or all are done.
     *
     * @throws NotVisible when nobody of the class may be seen
     */
    @Transactional(readOnly = true)
    public Optional<Lesson> inHand(UUID classId) {
        return pacing.unit(classId).map(unit -> inHand(store.lessons(unit.unitId()), store.choices(unit.unitId()),
                schoolDay(unit.calendar())));
    }

    /**
     * The skill the class is on: the first of the lesson in hand, else the one begun last by the pacing; empty without a unit.
     *
     * @throws NotVisible when nobody of the class may be seen
     */
    @Transactional(readOnly = true)
    public Optional<String> skillInHand(UUID classId) {
        Optional<String> lesson = inHand(classId).flatMap(l -> l.skills().stream().findFirst());
        return lesson.isPresent() ? lesson : pacing.unit(classId).flatMap(unit ->
                Course.on(current.today(), unit.pacing(), unit.calendar()).taught().stream().findFirst()
                        .map(Course.Stage::skill));
    }

    /** Today, else the last school day before. */
    private LocalDate schoolDay(SchoolCalendar calendar) {
        LocalDate today = current.today();
        return calendar.isSchoolDay(today) ? today : calendar.minusSchoolDays(today, 1);
    }

    private UnitPlan plan(UUID classId, UnitInHand unit) {
        LocalDate today = current.today();
        SchoolCalendar calendar = unit.calendar();
        LocalDate day = schoolDay(calendar);
        List<Lesson> lessons = store.lessons(unit.unitId());
        List<LessonChoice> choices = store.choices(unit.unitId());
        Lesson inHand = inHand(lessons, choices, day);
        LocalDate since = since(unit, choices, day);
        Map<String, Integer> steps = inHand == null ? Map.of() : steps(unit, inHand, day);
        List<ChildRow> children = roster.children(classId);
        EffectiveLooks looks = EffectiveLooks.of(observations.ofClass(classId), progressions.ofClass(classId), today);
        LessonStanding standing = LessonStanding.of(children.stream().map(ChildRow::schoolKey).toList(), steps, since,
                looks::of);
        return new UnitPlan(unit, day, lessons, choices, inHand, since, steps, standing,
                course(lessons, choices, inHand, day).end(day, calendar), children, store.openTasks(classId));
    }

    /** The lesson chosen about on the day, else the first the class has not moved on from. */
    private static @Nullable Lesson inHand(List<Lesson> lessons, List<LessonChoice> choices, LocalDate day) {
        Optional<UUID> today = choices.stream().filter(c -> c.day().equals(day)).map(LessonChoice::lessonId)
                .findFirst();
        Set<UUID> done = choices.stream().filter(c -> c.choice() != Choice.ANOTHER_DAY).map(LessonChoice::lessonId)
                .collect(Collectors.toSet());
        return lessons.stream().filter(l -> today.isPresent() ? l.lessonId().equals(today.get())
                : !done.contains(l.lessonId())).findFirst().orElse(null);
    }

    /** The school day after the class last moved on, else the first day of the unit. */
    private static LocalDate since(UnitInHand unit, List<LessonChoice> choices, LocalDate day) {
        return choices.stream().filter(c -> c.choice() != Choice.ANOTHER_DAY && c.day().isBefore(day))
                .reduce((older, newer) -> newer).map(c -> unit.calendar().plusSchoolDays(c.day(), 1))
                .orElse(unit.startsOn().isAfter(day) ? day : unit.startsOn());
    }

    private static Map<String, Integer> steps(UnitInHand unit, Lesson lesson, LocalDate day) {
        Map<String, Integer> due = unit.pacing().dueOn(day);
        Map<String, Integer> steps = new LinkedHashMap<>();
        for (String skill : lesson.skills()) {
            Integer own = lesson.step();
            steps.put(skill, own != null ? own : due.containsKey(skill) ? due.get(skill)
                    : unit.pacing().rows().stream().filter(r -> r.skill().equals(skill) && r.expectedStep() != null)
                            .map(PacingRow::expectedStep).findFirst().orElse(STEP_OF_A_SKILL_WITHOUT_DATES));
        }
        return steps;
    }

    private static UnitCourse course(List<Lesson> lessons, List<LessonChoice> choices, @Nullable Lesson inHand,
            LocalDate day) {
        Map<UUID, Long> used = choices.stream().collect(Collectors.groupingBy(LessonChoice::lessonId,
                Collectors.counting()));
        Set<UUID> done = choices.stream().filter(c -> c.choice() != Choice.ANOTHER_DAY).map(LessonChoice::lessonId)
                .collect(Collectors.toSet());
        boolean chosen = choices.stream().anyMatch(c -> c.day().equals(day));
        int left = 0;
        int again = 0;
        for (Lesson lesson : lessons) {
            int days = used.getOrDefault(lesson.lessonId(), 0L).intValue();
            again += Math.max(0, days - lesson.days());
            if (!done.contains(lesson.lessonId())) {
                boolean stays = days > 0;
                int own = Math.max(stays ? 1 : 0, lesson.days() - days);
                left += lesson.equals(inHand) && !chosen ? Math.max(0, own - 1) : own;
            }
        }
        return new UnitCourse(left, choices.size(), again);
    }

    /**
     * Stores what the teacher chose for the day and moves the due dates to come: a day beyond the plan moves them one
     * school day on, a plan not used up brings them nearer. Choosing again on the same day replaces the choice and
     * what it moved.
     *
     * @param again for {@link Choice#MOVE_ON_SHOW_AGAIN} the children, at least one; each becomes a table task
     * @throws IllegalArgumentException when there is no lesson, no child is named, or another adult chose meanwhile
     */
    public void choose(UUID classId, Choice choice, Collection<UUID> again) {
        UnitPlan plan = plan(classId).orElseThrow(() -> new Refused("unit.none"));
        Lesson lesson = plan.inHand();
        if (lesson == null) {
            throw new Refused("lesson.none");
        }
        List<UUID> children = choice == Choice.MOVE_ON_SHOW_AGAIN ? plan.children().stream().map(ChildRow::childId)
                .filter(again::contains).toList() : List.of();
        if (choice == Choice.MOVE_ON_SHOW_AGAIN && children.isEmpty()) {
            throw new Refused("lesson.nobody");
        }
        Optional<LessonChoice> before = plan.chosenToday();
        int used = plan.daysUsed(lesson.lessonId()) + (before.isPresent() ? 0 : 1);
        int moved = choice == Choice.ANOTHER_DAY ? used >= lesson.days() ? 1 : 0 : Math.min(0, used - lesson.days());
        SignedIn adult = current.get();
        LessonChoice made = new LessonChoice(plan.day(), before.map(LessonChoice::number).orElse(0) + 1,
                lesson.lessonId(), choice, children, moved, adult.name());
        if (!store.add(adult.districtId(), plan.unit().unitId(), made, plan.standing(), adult.adultId())) {
            throw new Refused("lesson.chosen");
        }
        int net = moved - before.map(LessonChoice::moved).orElse(0);
        if (net != 0 && !plan.unit().pacing().rows().isEmpty()) {
            pacing.importPacing(classId, plan.unit().unitId(), UnitCourse.moved(plan.unit().pacing().rows(),
                    plan.day(), net, plan.unit().calendar()));
        }
        List<TableTask> tasks = new ArrayList<>();
        children.forEach(child -> lesson.skills().forEach(skill -> tasks.add(
                new TableTask(child, skill, TableTask.Why.SHOW_AGAIN, plan.day()))));
        addTasks(classId, tasks);
    }

    /** Adds table tasks; one that is open already for the child and skill is not doubled. Gives how many are new. */
    public int addTasks(UUID classId, List<TableTask> tasks) {
        access.requireClass(classId);
        Set<UUID> children = roster.children(classId).stream().map(ChildRow::childId).collect(Collectors.toSet());
        Set<String> open = store.openTasks(classId).stream().map(t -> t.childId() + " " + t.skill())
                .collect(Collectors.toSet());
        SignedIn adult = current.get();
        int added = 0;
        for (TableTask task : tasks) {
            if (children.contains(task.childId()) && open.add(task.childId() + " " + task.skill())) {
                store.add(adult.districtId(), classId, task, adult.adultId());
                added++;
            }
        }
        return added;
    }

    /** Table tasks nobody has looked at yet, oldest first, of children this adult sees. */
    public List<TableTask> openTasks(UUID classId) {
        Set<UUID> children = roster.children(classId).stream().map(ChildRow::childId).collect(Collectors.toSet());
        return store.openTasks(classId).stream().filter(t -> children.contains(t.childId())).toList();
    }

    /**
     * Saves lessons, new or changed.
     *
     * @throws NotVisible when the adult does not see the class whole
     * @throws IllegalArgumentException when somebody else changed one meanwhile
     */
    public void save(UUID classId, List<Lesson> lessons) {
        store(classId, lessons, false);
    }

    /** Takes a lesson out of the unit; what was chosen after it stays. */
    public void remove(UUID classId, Lesson lesson) {
        store(classId, List.of(lesson), true);
    }

    private void store(UUID classId, List<Lesson> lessons, boolean removed) {
        access.requireClass(classId);
        UnitInHand unit = pacing.unit(classId).orElseThrow(NotVisible::new);
        SignedIn adult = current.get();
        for (Lesson lesson : lessons) {
            if (!store.add(adult.districtId(), unit.unitId(), lesson, removed, adult.adultId())) {
                throw new Refused("lesson.meanwhile", lesson.title());
            }
        }
    }

    /**
     * Writes lessons to begin with from the due dates: one for each skill and step, in the order they become due, as
     * long as the school days between them.
     *
     * @return how many were written
     */
    public int fromDates(UUID classId) {
        UnitPlan plan = plan(classId).orElseThrow(NotVisible::new);
        Map<String, String> titles = progressions.ofClass(classId).titles();
        LocalDate at = plan.unit().startsOn();
        List<Lesson> lessons = new ArrayList<>();
        for (PacingRow row : plan.unit().pacing().rows().stream().filter(r -> r.expectedStep() != null
                && r.due().isAfter(plan.unit().startsOn())).sorted(java.util.Comparator.comparing(PacingRow::due))
                .toList()) {
            int days = Math.clamp(plan.unit().calendar().schoolDaysBetween(at, row.due()), 1, 20);
            String title = row.skill() + " " + titles.getOrDefault(row.skill(), "");
            lessons.add(new Lesson(UUID.randomUUID(), 0, plan.lessons().size() + lessons.size() + 1,
                    title.strip(), List.of(row.skill()), row.expectedStep(), "", "", days));
            at = row.due();
        }
        save(classId, lessons);
        return lessons.size();
    }
}
