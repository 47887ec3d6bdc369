package org.stepwell.roster;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;

/** Children one by one: into a class, out of it, on to another; what was seen of them stays with them. */
@Service
@Transactional
public class EnrolmentService {
    private static final int LONGEST_NAME = 100;
    private static final int LONGEST_GRADE = 20;

    private final EnrolmentStore store;
    private final RosterStore roster;
    private final Access access;
    private final CurrentAdult current;

    EnrolmentService(EnrolmentStore store, RosterStore roster, Access access, CurrentAdult current) {
        this.store = store;
        this.roster = roster;
        this.access = access;
        this.current = current;
    }

    /**
     * What is written down of a child.
     *
     * @param key the school's own id; blank makes one
     * @param givenName name used at the table
     * @param familyName may be blank
     * @param grade blank = 1
     */
    public record Entry(String key, String givenName, String familyName, String grade) {}

    /** Children of a class now and to come, by name. */
    @Transactional(readOnly = true)
    public List<Enrolled> inClass(UUID classId) {
        access.requireClass(classId);
        return store.inClass(classId, current.today());
    }

    /** Children who were in the class and are in none now or to come, by name. */
    @Transactional(readOnly = true)
    public List<Enrolled> left(UUID classId) {
        access.requireClass(classId);
        return store.left(classId, current.today());
    }

    /**
     * Adds a child to a class.
     *
     * @param start first day; {@code null} = today
     * @return the child
     * @throws EntryFault.Found naming the field (key, given, family, grade) that cannot be taken
     */
    public UUID add(UUID classId, Entry entry, @Nullable LocalDate start) {
        access.requireClass(classId);
        Entry clean = clean(entry);
        String key = entry.key().isBlank() ? "c" + UUID.randomUUID().toString().substring(0, 8)
                : EntryFault.name("key", entry.key(), LONGEST_NAME);
        if (roster.childByKey(key).isPresent()) {
            throw new EntryFault.Found("key", "taken");
        }
        int district = current.get().districtId();
        UUID child = roster.addChild(district, key, clean.givenName(), clean.familyName(), clean.grade());
        roster.enrol(district, classId, child, start == null ? current.today() : start, null);
        return child;
    }

    /** Corrects name and grade of a child of the class; the id stays. */
    public void correct(UUID classId, UUID childId, Entry entry) {
        stay(classId, childId);
        Entry clean = clean(entry);
        roster.renameChild(childId, clean.givenName(), clean.familyName(), clean.grade());
    }

    private static Entry clean(Entry entry) {
        String given = EntryFault.name("given", entry.givenName(), LONGEST_NAME);
        String family = entry.familyName().isBlank() ? "" : EntryFault.name("family", entry.familyName(), LONGEST_NAME);
        String grade = entry.grade().isBlank() ? "1" : EntryFault.name("grade", entry.grade(), LONGEST_GRADE);
        return new Entry(entry.key(), given, family, grade);
    }

    /**
     * Sets the last day of a child in the class.
     *
     * @param lastDay {@code null} takes an end back
     * @throws EntryFault.Found for day, when it is before the first one
     */
    public void end(UUID classId, UUID childId, @Nullable LocalDate lastDay) {
        Enrolled stay = stay(classId, childId);
        if (lastDay != null && lastDay.isBefore(stay.startsOn())) {
            throw new EntryFault.Found("day", "day");
        }
        roster.enrol(current.get().districtId(), classId, childId, stay.startsOn(), lastDay);
    }

    /**
     * Moves a child on to another class; the day before is the last one here.
     *
     * @throws EntryFault.Found for day, when it is not after the first one here
     * @throws NotVisible when one of the classes is not the adult's
     */
    public void move(UUID classId, UUID childId, UUID toClass, LocalDate firstDay) {
        Enrolled stay = stay(classId, childId);
        access.requireClass(toClass);
        if (!firstDay.isAfter(stay.startsOn())) {
            throw new EntryFault.Found("day", "day");
        }
        int district = current.get().districtId();
        roster.enrol(district, classId, childId, stay.startsOn(), firstDay.minusDays(1));
        roster.enrol(district, toClass, childId, firstDay, null);
    }

    /** Takes a child who left back into the class from today on. */
    public void back(UUID classId, UUID childId) {
        if (left(classId).stream().noneMatch(child -> child.childId().equals(childId))) {
            throw new NotVisible();
        }
        roster.enrol(current.get().districtId(), classId, childId, current.today(), null);
    }

    private Enrolled stay(UUID classId, UUID childId) {
        return inClass(classId).stream().filter(child -> child.childId().equals(childId)).findFirst()
                .orElseThrow(NotVisible::new);
    }
}
