package org.stepwell.privacy;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;

/**
 * What the signed-in adult may see: teachers, co-teachers and aides the children now in their classes, a school lead
 * those of the school, a specialist the children shared by a grant that has not ended.
 */
@Service
@Transactional
public class Access {
    private final AccessStore store;
    private final ErasedIds erasedIds;
    private final CurrentAdult current;

    Access(AccessStore store, ErasedIds erasedIds, CurrentAdult current) {
        this.store = store;
        this.erasedIds = erasedIds;
        this.current = current;
    }

    /** Classes seen whole. */
    public Set<UUID> classes() {
        return store.classes(current.get().adultId(), current.today());
    }

    /** Children seen, of whatever class. */
    public Set<UUID> children() {
        return store.children(current.get().adultId(), current.today(), true);
    }

    /** Children seen for no other reason than that they are shared. */
    public Set<UUID> shared() {
        return store.shared(current.get().adultId(), current.today());
    }

    /** What may be shared beside the looks at a child and where they stand. */
    public enum Part {
        /** Plans of extra help or deeper work, and their sessions. */
        PLAN,
        /** Notes home. */
        NOTES
    }

    /** Children of whom a part is seen: in a class seen whole, or shared with that part. */
    public Set<UUID> children(Part part) {
        return store.children(current.get().adultId(), current.today(), part);
    }

    /**
     * Holds that a part of a child may be seen.
     *
     * @throws NotVisible when not, or when there is no such child
     */
    public void requirePart(UUID childId, Part part) {
        if (!children(part).contains(childId)) {
            throw new NotVisible();
        }
    }

    /** Children the adult could see on a day, at least for a part of it. */
    public Set<UUID> childrenOn(LocalDate day) {
        return store.children(current.get().adultId(), day, false);
    }

    /**
     * Holds that the child may be seen.
     *
     * @throws NotVisible when not, or when there is no such child
     */
    public void requireChild(UUID childId) {
        if (!children().contains(childId)) {
            throw new NotVisible();
        }
    }

    /**
     * Holds that the class may be seen whole, for what is decided or imported for a class.
     *
     * @throws NotVisible when not, or when there is no such class
     */
    public void requireClass(UUID classId) {
        if (!classes().contains(classId)) {
            throw new NotVisible();
        }
    }

    /** Whether the adult sees the class whole or at least one child now in it. */
    public boolean hasPart(UUID classId) {
        return classes().contains(classId) || store.anyIn(classId, children(), current.today());
    }

    /** Shares a child with an adult from one day to another, for a reason. */
    public void grant(int districtId, UUID adultId, UUID childId, String reason, LocalDate from, LocalDate to) {
        store.grant(districtId, adultId, childId, reason, from, to);
    }

    /** Ends what is shared with an adult of the children who are or were in a class, from a moment on. */
    public void endGrants(UUID adultId, UUID classId, Instant at) {
        store.endGrants(adultId, classId, at);
    }

    /**
     * When all records on the child with this id of the school's own were erased, at last; says so to every adult of the
     * district, and nothing of who it was.
     */
    public Optional<Instant> erased(String schoolKey) {
        return store.erased(erasedIds.digest(current.get().districtId(), schoolKey));
    }

    /**
     * Holds that the signed-in adult is lead of a school whose child this is or was.
     *
     * @throws NotVisible when not, or when there is no such child
     */
    public void requireLead(UUID childId) {
        if (!leads(childId)) {
            throw new NotVisible();
        }
    }

    /** Whether the signed-in adult is lead of a school whose child this is or was. */
    public boolean leads(UUID childId) {
        SignedIn adult = current.get();
        return adult.lead() && store.everInSchool(childId, adult.schoolId());
    }
}
