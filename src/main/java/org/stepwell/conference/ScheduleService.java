package org.stepwell.conference;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.conference.Schedule.Arrival;
import org.stepwell.conference.Schedule.Visit;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;

/** When which family comes for a talk, who came, and what is printed for it. */
@Service
@Transactional
public class ScheduleService {
    /** Most slots of a schedule. */
    public static final int MOST = 120;

    private final ScheduleStore store;
    private final RosterService roster;
    private final HomeNoteService notes;
    private final Access access;
    private final CurrentAdult current;

    ScheduleService(ScheduleStore store, RosterService roster, HomeNoteService notes, Access access, CurrentAdult current) {
        this.store = store;
        this.roster = roster;
        this.notes = notes;
        this.access = access;
        this.current = current;
    }

    /**
     * The schedule of a class; one without slots where there is none.
     *
     * @throws NotVisible when the class is not seen whole
     */
    public Schedule schedule(UUID classId) {
        access.requireClass(classId);
        return store.newest(classId);
    }

    /**
     * Keeps a new version.
     *
     * @param basedOn version the adult started from; 0 when there was none
     * @throws Refused when slots overlap, a household has two times of which none was missed, there are too many, or
     *     somebody else kept a version meanwhile
     * @throws NotVisible when the class is not seen whole or a child is not in it
     */
    public void save(UUID classId, int basedOn, List<Slot> slots) {
        Schedule before = schedule(classId);
        List<Slot> sorted = slots.stream().sorted().toList();
        if (sorted.size() > MOST) {
            throw new Refused("conference.most", MOST);
        }
        Set<UUID> known = roster.children(classId).stream().map(ChildRow::childId).collect(Collectors.toSet());
        before.slots().stream().map(Slot::childId).filter(Objects::nonNull).forEach(known::add); // may have left since
        Set<List<Object>> met = new HashSet<>();
        for (int i = 0; i < sorted.size(); i++) {
            Slot slot = sorted.get(i);
            if (i > 0 && sorted.get(i - 1).day().equals(slot.day()) && sorted.get(i - 1).end().isAfter(slot.start())) {
                throw new Refused("conference.overlap", slot.day(), slot.start());
            }
            UUID child = slot.childId();
            if (child == null) {
                continue;
            }
            if (!known.contains(child)) {
                throw new NotVisible();
            }
            if (before.of(slot) != Arrival.NO_SHOW && !met.add(List.of(child, slot.household()))) {
                throw new Refused("conference.twice", roster.child(child).label());
            }
        }
        SignedIn adult = current.get();
        if (before.version() != basedOn
                || !store.add(adult.districtId(), classId, basedOn + 1, sorted, adult.adultId())) {
            throw new Refused("conference.meanwhile");
        }
    }

    /**
     * Says that a household came, did not come, or that neither is known after all.
     *
     * @throws NotVisible when the class of the child is not seen whole
     */
    public void arrived(UUID childId, LocalDate day, int household, Arrival outcome) {
        access.requireClass(roster.child(childId).classId());
        SignedIn adult = current.get();
        store.arrived(adult.districtId(), new Visit(childId, day, household), outcome, adult.adultId());
    }

    /**
     * The schedule to print, with the children's names.
     *
     * @throws NotVisible when the class is not seen whole
     */
    public SchedulePaper list(UUID classId) {
        Schedule schedule = schedule(classId);
        List<ChildRow> children = roster.children(classId);
        return new SchedulePaper(className(classId), current.get().name(), schedule,
                children.stream().collect(Collectors.toMap(ChildRow::childId, ChildRow::label)),
                children.stream().filter(c -> !schedule.holds(c.childId())).map(ChildRow::label).toList());
    }

    /**
     * The notes of the class in the order of the schedule: a copy for each household in its language, those who have no
     * time at the end. Households that came or were missed are past. Each is written down in the record of its child.
     *
     * @param language of the copies of children without a time
     * @throws NotVisible when the class is not seen whole
     */
    public List<HomePage> pages(UUID classId, Language language) {
        Schedule schedule = schedule(classId);
        Map<UUID, ChildRow> children = roster.children(classId).stream().filter(c -> notes.mayRead(c.childId()))
                .collect(Collectors.toMap(ChildRow::childId, Function.identity(), (a, b) -> a,
                        java.util.LinkedHashMap::new));
        List<HomePage> pages = new ArrayList<>();
        Set<UUID> had = new HashSet<>();
        for (Slot slot : schedule.slots()) {
            UUID child = slot.childId();
            if (child != null && children.containsKey(child)) {
                had.add(child);
                if (schedule.of(slot) == Arrival.OPEN) {
                    pages.add(notes.page(child, slot.language()));
                }
            }
        }
        children.keySet().stream().filter(child -> !had.contains(child))
                .forEach(child -> pages.add(notes.page(child, language)));
        return pages;
    }

    private String className(UUID classId) {
        return roster.classes().stream().filter(c -> c.classId().equals(classId)).map(Classroom::name).findFirst()
                .orElse("");
    }
}
