package org.stepwell.roster;

import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.roster.Invitations.Role;

/** Who works in a class, and codes that let somebody in. */
@Repository
class AdultStore {
    private static final String NOW = " ca.starts_on <= :day and (ca.ends_on is null or ca.ends_on >= :day)"
            + " and ca.ended_at is null ";
    private static final String OPEN = " used_at is null and revoked_at is null and expires_at > :at ";

    private final JdbcClient jdbc;

    AdultStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<ClassAdult> inClass(UUID classId, LocalDate day) {
        return jdbc.sql("""
                select a.adult_id, a.sign_in, a.name, ca.role, ca.starts_on
                from class_adult ca join adult a using (district_id, adult_id)
                where ca.class_id = :class and""" + NOW + """
                union all
                select a.adult_id, a.sign_in, a.name, 'lead', null
                from adult a join classroom c using (district_id, school_id) where c.class_id = :class and a.lead
                order by 3, 2""").param("class", classId).param("day", day)
                .query((row, n) -> new ClassAdult(row.getObject(1, UUID.class), row.getString(2), row.getString(3),
                        role(row.getString(4)), row.getObject(5, LocalDate.class)))
                .list();
    }

    /** The teachers of a class now; nobody else changes who they are until the transaction is over. */
    List<UUID> lockTeachers(UUID classId, LocalDate day) {
        return jdbc.sql("select ca.adult_id from class_adult ca where ca.class_id = :class and ca.role = 'teacher' and"
                + NOW + "order by ca.adult_id for update").param("class", classId).param("day", day)
                .query(UUID.class).list();
    }

    /** Ends the access of an adult to a class from a moment on; {@code false} when there was none. */
    boolean end(UUID classId, UUID adultId, LocalDate day, Instant at) {
        return jdbc.sql("update class_adult ca set ends_on = :day, ended_at = :at where ca.class_id = :class"
                + " and ca.adult_id = :adult and" + NOW).param("class", classId).param("adult", adultId)
                .param("day", day).param("at", Timestamp.from(at)).update() > 0;
    }

    record Place(UUID schoolId, String school, String zone) {}

    Place schoolOf(UUID classId) {
        return jdbc.sql("select s.school_id, s.name, s.time_zone from school s join classroom c"
                + " using (district_id, school_id) where c.class_id = :class").param("class", classId)
                .query((row, n) -> new Place(row.getObject(1, UUID.class), row.getString(2), row.getString(3)))
                .single();
    }

    /** An adult of a school by sign-in name, however capitalized. */
    Optional<UUID> atSchool(UUID schoolId, String signIn) {
        return jdbc.sql("select adult_id from adult where school_id = :school and lower(sign_in) = :name")
                .param("school", schoolId).param("name", signIn.strip().toLowerCase(Locale.ROOT))
                .query(UUID.class).optional();
    }

    void invite(int districtId, UUID schoolId, @Nullable UUID classId, Role role, String forName, String codeHash,
            UUID by, Instant until) {
        jdbc.sql("""
                insert into invitation (district_id, school_id, class_id, role, for_name, code_hash, invited_by,
                                        expires_at)
                values (:d, :school, :class, :role, :name, :hash, :by, :until)""")
                .param("d", districtId).param("school", schoolId).param("class", classId).param("role", code(role))
                .param("name", forName).param("hash", codeHash).param("by", by)
                .param("until", Timestamp.from(until)).update();
    }

    /** Invitations to a class, and those of leads to its school, that still hold. */
    List<OpenInvitation> open(UUID classId, Instant at) {
        return jdbc.sql("select invitation_id, for_name, role, expires_at from invitation where (class_id = :class"
                + " or class_id is null and school_id = (select school_id from classroom where class_id = :class)) and"
                + OPEN + "order by created_at").param("class", classId).param("at", Timestamp.from(at))
                .query((row, n) -> new OpenInvitation(row.getObject(1, UUID.class), row.getString(2),
                        role(row.getString(3)), row.getTimestamp(4).toInstant()))
                .list();
    }

    boolean revoke(UUID invitationId, UUID by, Instant at) {
        return jdbc.sql("update invitation set revoked_at = :at, revoked_by = :by where invitation_id = :id and" + OPEN)
                .param("at", Timestamp.from(at)).param("by", by).param("id", invitationId).update() > 0;
    }

    record Held(UUID invitationId, UUID schoolId, String school, String zone, @Nullable UUID classId, Role role) {}

    /** The invitation behind a code, if it still holds; nobody else can use it until the transaction is over. */
    Optional<Held> take(String codeHash, Instant at) {
        return jdbc.sql("select i.invitation_id, i.school_id, s.name, s.time_zone, i.class_id, i.role"
                + " from invitation i join school s using (district_id, school_id) where code_hash = :hash and" + OPEN
                + "for update of i").param("hash", codeHash).param("at", Timestamp.from(at))
                .query((row, n) -> new Held(row.getObject(1, UUID.class), row.getObject(2, UUID.class),
                        row.getString(3), row.getString(4), row.getObject(5, UUID.class), role(row.getString(6))))
                .optional();
    }

    void used(UUID invitationId, UUID by, Instant at) {
        jdbc.sql("update invitation set used_at = :at, used_by = :by where invitation_id = :id")
                .param("at", Timestamp.from(at)).param("by", by).param("id", invitationId).update();
    }

    static String code(Role role) {
        return role.name().toLowerCase(Locale.ROOT);
    }

    private static Role role(String code) {
        return Role.valueOf(code.toUpperCase(Locale.ROOT));
    }
}
