package org.stepwell.roster;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;

/** Who is in which class, as far as the signed-in adult may see. */
@Service
@Transactional
public class RosterService {
    private final RosterStore store;
    private final Access access;
    private final CurrentAdult current;
    private final EnrolmentService enrolments;
    private final AccessRecordService record;

    RosterService(RosterStore store, Access access, CurrentAdult current, EnrolmentService enrolments,
            AccessRecordService record) {
        this.store = store;
        this.access = access;
        this.current = current;
        this.enrolments = enrolments;
        this.record = record;
    }

    /** Classes with at least one child this adult may see, and those seen whole, by name. */
    public List<Classroom> classes() {
        return store.classes(access.classes(), access.children(), current.today());
    }

    /** Names of the adults of this adult's school by the sign-in names that stand in looks and files. */
    public Map<String, String> adults() {
        return store.adults(current.get().schoolId());
    }

    /** Names of children who are or were in a class with the child, so that none of them stands on a page about it. */
    public Set<String> otherNames(UUID childId) {
        return store.otherNames(childId);
    }

    /** Every child this adult may see, by given name. */
    public List<ChildRow> children() {
        return labelled(store.children(access.children(), current.today()));
    }

    /** The children of one class this adult may see, by given name. */
    public List<ChildRow> children(UUID classId) {
        return labelled(store.children(access.children(), current.today()).stream()
                .filter(child -> child.classId().equals(classId)).toList());
    }

    /**
     * One child.
     *
     * @throws NotVisible when there is none or it may not be seen
     */
    public ChildRow child(UUID childId) {
        return children().stream().filter(c -> c.childId().equals(childId)).findFirst()
                .orElseThrow(NotVisible::new);
    }

    /** A child by the school's own id, if this adult may see it. */
    public Optional<ChildRow> byKey(String schoolKey) {
        return children().stream().filter(c -> c.schoolKey().equals(schoolKey)).findFirst();
    }

    /** The id behind a school's own id in this district, seen or not; for looks made before access ended. */
    public Optional<UUID> idByKey(String schoolKey) {
        return store.childByKey(schoolKey);
    }

    /** Whether a child is or was in a class, whoever asks; tells nothing else. */
    public boolean everIn(UUID classId, UUID childId) {
        return store.everIn(classId, childId);
    }

    private static List<ChildRow> labelled(List<ChildRow> children) {
        Map<String, Long> count = children.stream()
                .collect(Collectors.groupingBy(ChildRow::givenName, Collectors.counting()));
        return children.stream().map(child -> {
            if (Objects.requireNonNull(count.get(child.givenName())) == 1 || child.familyName().isEmpty()) {
                return child;
            }
            List<ChildRow> same = children.stream().filter(c -> c.givenName().equals(child.givenName())).toList();
            for (int length = 1; length <= child.familyName().length(); length++) {
                int letters = length;
                String start = child.familyName().substring(0, letters);
                if (same.stream().filter(c -> c.familyName().startsWith(start)).count() == 1) {
                    return child.withLabel(child.givenName() + " " + start
                            + (letters < child.familyName().length() ? "." : ""));
                }
            }
            return child.withLabel(child.givenName() + " " + child.familyName() + " " + child.schoolKey());
        }).toList();
    }

    /**
     * Adds a child to a class from today on; {@link EnrolmentService} says more of one.
     *
     * @param schoolKey the school's own id; {@code null} or blank makes one
     * @throws EntryFault.Found when the name is blank or the id is taken
     */
    public UUID addChild(UUID classId, @Nullable String schoolKey, String givenName, String familyName) {
        return enrolments.add(classId,
                new EnrolmentService.Entry(schoolKey == null ? "" : schoolKey, givenName, familyName, ""), null);
    }

    /**
     * Takes a roster into the class: new children are added, names and dates of known ones follow the file. Nobody is
     * taken out because a row is missing.
     *
     * @return how many rows were taken
     */
    public int importRoster(UUID classId, List<RosterRow> rows) {
        access.requireClass(classId);
        int district = current.get().districtId();
        for (RosterRow row : rows) {
            Optional<UUID> known = store.childByKey(row.child());
            UUID child = known.orElseGet(() -> store.addChild(district, row.child(), row.givenName(),
                    row.familyName(), row.grade()));
            if (known.isPresent()) {
                access.requireChild(child);
                store.renameChild(child, row.givenName(), row.familyName(), row.grade());
            }
            store.enrol(district, classId, child, row.start() == null ? current.today() : row.start(), row.end());
        }
        return rows.size();
    }

    /** Whether the signed-in adult sees a class whole, and not only children of it that are shared. */
    public boolean seesWhole(UUID classId) {
        return access.classes().contains(classId);
    }

    /** Whether the signed-in adult belongs to the invented sample and not to a real school. */
    public boolean inSample() {
        return store.sample();
    }

    /** The class as a roster file has it; written down in the record of each child in it. */
    public List<RosterRow> export(UUID classId) {
        access.requireClass(classId);
        List<RosterRow> rows = store.export(classId);
        record.filed(classId, rows.stream().map(RosterRow::child).toList(), Seen.ROSTER_FILE);
        return rows;
    }

    /** Makes the district, school and class of a new store; nobody needs to be signed in. */
    public UUID found(int districtId, String district, boolean sample, String school, String zone, String className,
            String grade, UUID schoolId) {
        store.addDistrict(districtId, district, sample);
        store.addSchool(districtId, schoolId, school, zone);
        UUID classId = UUID.randomUUID();
        store.addClass(districtId, classId, schoolId, className, grade);
        return classId;
    }

    /** Adds an adult; a school lead belongs to no class. Nobody needs to be signed in. */
    public UUID addAdult(int districtId, UUID schoolId, UUID classId, String signIn, String name, String role,
            LocalDate from) {
        UUID adult = UUID.randomUUID();
        store.addAdult(districtId, adult, schoolId, signIn, name, role.equals("lead"));
        if (!role.equals("lead")) {
            store.addClassAdult(districtId, classId, adult, role, from);
        }
        return adult;
    }
}
