package org.stepwell.caseload;

import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What is shared, and the threads. A sharing is ended, never changed; a comment stays. */
@Repository
class CaseloadStore {
    private final JdbcClient jdbc;

    CaseloadStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Sharings of these children that hold on a day, by name of the adult. */
    List<Sharing> sharings(Collection<UUID> children, LocalDate day) {
        return jdbc.sql("""
                select g.grant_id, g.child_id, g.adult_id, a.name, g.plan, g.notes, g.reason, g.ends_on,
                       coalesce(b.name, '')
                from caseload_grant g join adult a using (district_id, adult_id)
                left join adult b on b.district_id = g.district_id and b.adult_id = g.granted_by
                where g.child_id = any (:children) and g.ends_on >= :day and g.ended_at is null
                order by a.name, g.ends_on, g.grant_id""").param("children", children.toArray(UUID[]::new))
                .param("day", day).query((row, n) -> new Sharing(row.getObject(1, UUID.class),
                        row.getObject(2, UUID.class), row.getObject(3, UUID.class), row.getString(4),
                        row.getBoolean(5), row.getBoolean(6), row.getString(7), row.getObject(8, LocalDate.class),
                        row.getString(9))).list();
    }

    /** What is shared with an adult on a day, by child. */
    List<Sharing> with(UUID adultId, Collection<UUID> children, LocalDate day) {
        return sharings(children, day).stream().filter(s -> s.adultId().equals(adultId)).toList();
    }

    void share(int district, UUID childId, Terms terms, UUID by) {
        jdbc.sql("""
                insert into caseload_grant (district_id, adult_id, child_id, plan, notes, reason, starts_on, ends_on,
                    granted_by)
                values (:d, :adult, :child, :plan, :notes, :reason, :from, :until, :by)""")
                .param("d", district).param("adult", terms.adultId()).param("child", childId)
                .param("plan", terms.plan()).param("notes", terms.notes()).param("reason", terms.reason())
                .param("from", terms.from()).param("until", terms.until()).param("by", by).update();
    }

    /** What a new sharing says. */
    record Terms(UUID adultId, boolean plan, boolean notes, String reason, LocalDate from, LocalDate until) {}

    boolean end(UUID grantId, Instant at) {
        return jdbc.sql("update caseload_grant set ended_at = :at where grant_id = :id and ended_at is null")
                .param("at", Timestamp.from(at)).param("id", grantId).update() == 1;
    }

    /** Adults of a school who do not see the class whole, by name. */
    List<Map.Entry<UUID, String>> others(UUID schoolId, UUID classId, LocalDate day) {
        return jdbc.sql("""
                select a.adult_id, a.name from adult a
                where a.school_id = :school and not a.lead and not exists (
                    select 1 from class_adult ca where ca.district_id = a.district_id and ca.adult_id = a.adult_id
                      and ca.class_id = :class and ca.role <> 'specialist' and ca.ended_at is null
                      and ca.starts_on <= :day and (ca.ends_on is null or ca.ends_on >= :day))
                order by a.name, a.adult_id""").param("school", schoolId).param("class", classId).param("day", day)
                .query((row, n) -> Map.entry(row.getObject(1, UUID.class), row.getString(2))).list();
    }

    void comment(int district, UUID id, UUID childId, String words, UUID by) {
        jdbc.sql("""
                insert into caseload_comment (district_id, comment_id, child_id, words, written_by)
                values (:d, :id, :child, :words, :by) on conflict do nothing""").param("d", district).param("id", id)
                .param("child", childId).param("words", words).param("by", by).update();
    }

    /** The thread about a child, oldest first. */
    List<Comment> comments(UUID childId, ZoneId zone) {
        return jdbc.sql("""
                select c.words, a.name, c.written_at from caseload_comment c
                join adult a on a.district_id = c.district_id and a.adult_id = c.written_by
                where c.child_id = :child order by c.written_at, c.comment_id""").param("child", childId)
                .query((row, n) -> new Comment(row.getString(1), row.getString(2),
                        row.getTimestamp(3).toInstant().atZone(zone).toOffsetDateTime())).list();
    }
}
