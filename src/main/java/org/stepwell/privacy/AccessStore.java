package org.stepwell.privacy;

import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.privacy.Access.Part;

/** Reach of an adult on a day. */
@Repository
class AccessStore {
    private static final String CLASSES = """
            select ca.class_id from class_adult ca
            where ca.adult_id = :adult and ca.role <> 'specialist'
              and ca.starts_on <= :day and (ca.ends_on is null or ca.ends_on >= :day)
              and (ca.ended_at is null or not :still)
            union
            select c.class_id from classroom c join adult a using (district_id, school_id)
            where a.adult_id = :adult and a.lead""";

    /** A grant that holds on the day, with the parts asked for. */
    private static final String SHARED = "select g.child_id from caseload_grant g where g.adult_id = :adult"
            + " and g.starts_on <= :day and g.ends_on >= :day and (g.ended_at is null or not :still)"
            + " and (g.plan or not :plan) and (g.notes or not :notes)";
    private static final String IN_CLASSES = "select e.child_id from enrolment e where e.class_id in (" + CLASSES + ")"
            + " and (e.ends_on is null or e.ends_on >= :day)";

    private final JdbcClient jdbc;

    AccessStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Set<UUID> classes(UUID adultId, LocalDate day) {
        return jdbc.sql(CLASSES).param("adult", adultId).param("day", day).param("still", true).query(UUID.class)
                .set();
    }

    /** @param still leave out what was ended by somebody, even on that very day */
    Set<UUID> children(UUID adultId, LocalDate day, boolean still) {
        return children(IN_CLASSES + " union " + SHARED, adultId, day, still, null);
    }

    /** Those of whom a part is seen today. */
    Set<UUID> children(UUID adultId, LocalDate day, Part part) {
        return children(IN_CLASSES + " union " + SHARED, adultId, day, true, part);
    }

    /** Those seen today for no other reason than a grant. */
    Set<UUID> shared(UUID adultId, LocalDate day) {
        return children(SHARED + " except " + IN_CLASSES, adultId, day, true, null);
    }

    private Set<UUID> children(String sql, UUID adultId, LocalDate day, boolean still, @Nullable Part part) {
        return jdbc.sql(sql).param("adult", adultId).param("day", day).param("still", still)
                .param("plan", part == Part.PLAN).param("notes", part == Part.NOTES).query(UUID.class).set();
    }

    boolean anyIn(UUID classId, Set<UUID> children, LocalDate day) {
        return !children.isEmpty() && jdbc.sql("select exists (select 1 from enrolment where class_id = :class"
                + " and child_id in (:children) and (ends_on is null or ends_on >= :day))")
                .param("class", classId).param("children", children).param("day", day).query(Boolean.class).single();
    }

    void endGrants(UUID adultId, UUID classId, Instant at) {
        jdbc.sql("""
                update caseload_grant set ended_at = :at where adult_id = :adult and ended_at is null
                  and child_id in (select child_id from enrolment where class_id = :class)""")
                .param("at", Timestamp.from(at)).param("adult", adultId).param("class", classId).update();
    }

    void grant(int districtId, UUID adultId, UUID childId, String reason, LocalDate from, LocalDate to) {
        jdbc.sql("""
                insert into caseload_grant (district_id, adult_id, child_id, reason, starts_on, ends_on)
                values (:district, :adult, :child, :reason, :from, :to)""")
                .param("district", districtId).param("adult", adultId).param("child", childId)
                .param("reason", reason).param("from", from).param("to", to).update();
    }

    Optional<Instant> erased(String keyDigest) {
        return jdbc.sql("select max(erased_at) from erasure where key_digest = :digest").param("digest", keyDigest)
                .query((row, n) -> Optional.ofNullable(row.getTimestamp(1)).map(Timestamp::toInstant)).single();
    }

    boolean everInSchool(UUID childId, UUID schoolId) {
        return jdbc.sql("select exists (select 1 from enrolment join classroom using (district_id, class_id)"
                + " where child_id = :child and school_id = :school)").param("child", childId)
                .param("school", schoolId).query(Boolean.class).single();
    }
}
