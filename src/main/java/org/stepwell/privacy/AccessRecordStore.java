package org.stepwell.privacy;

import java.sql.Date;
import java.sql.Timestamp;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Lines of the record of access, their keys, and who can see a child. */
@Repository
class AccessRecordStore {
    /** Everybody who can see the child today, each part of theirs a row. */
    private static final String READERS = """
            select a.adult_id, a.name, ca.role interest, null::uuid grant_id, ca.ends_on until, null::text reason,
                   1 place
            from class_adult ca join adult a using (district_id, adult_id)
              join enrolment e using (district_id, class_id)
            where e.child_id = :child and (e.ends_on is null or e.ends_on >= :day) and ca.role <> 'specialist'
              and ca.starts_on <= :day and (ca.ends_on is null or ca.ends_on >= :day) and ca.ended_at is null
            union all
            select a.adult_id, a.name, 'specialist', g.grant_id, g.ends_on, g.reason, 2
            from caseload_grant g join adult a using (district_id, adult_id)
            where g.child_id = :child and g.starts_on <= :day and g.ends_on >= :day and g.ended_at is null
            union all
            select a.adult_id, a.name, 'lead', null, null, null, 3
            from adult a join classroom c using (district_id, school_id) join enrolment e using (district_id, class_id)
            where a.lead and e.child_id = :child and (e.ends_on is null or e.ends_on >= :day)""";

    private final JdbcClient jdbc;

    AccessRecordStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Where a chain ends. */
    record Head(long seq, String digest) {}

    /** The part an adult has in a child. */
    record Interest(String word, @Nullable UUID grantId) {}

    Optional<Interest> interest(UUID adultId, UUID childId, LocalDate day) {
        return jdbc.sql("select interest, grant_id from (" + READERS + ") r where adult_id = :adult"
                + " order by place, until desc nulls first, interest limit 1")
                .param("child", childId).param("day", day).param("adult", adultId)
                .query((row, n) -> new Interest(row.getString(1), row.getObject(2, UUID.class))).optional();
    }

    List<Reader> readers(UUID childId, LocalDate day) {
        return jdbc.sql("select distinct name, interest, until, reason, place from (" + READERS
                + ") r order by place, name, until").param("child", childId).param("day", day)
                .query((row, n) -> {
                    Date until = row.getDate(3);
                    return new Reader(row.getString(1), row.getString(2), until == null ? null : until.toLocalDate(),
                            row.getString(4));
                }).list();
    }

    /** Ids of the children with these ids of the school's own. */
    List<UUID> idsOf(Collection<String> schoolKeys) {
        return schoolKeys.isEmpty() ? List.of() : jdbc.sql(
                "select child_id from child where school_key in (:keys) order by child_id").param("keys", schoolKeys)
                .query(UUID.class).list();
    }

    /** Those of the children who are or were in the class, in order of their ids. */
    List<UUID> everIn(UUID classId, Collection<UUID> children) {
        return children.isEmpty() ? List.of() : jdbc.sql("""
                select distinct child_id from enrolment where class_id = :class and child_id in (:children)
                order by child_id""").param("class", classId)
                .param("children", Set.copyOf(children)).query(UUID.class).list();
    }

    /** The key of a child, made from the bytes at hand when there is none; empty when there is no such child. */
    Optional<byte[]> key(int districtId, UUID childId, byte[] fresh) {
        jdbc.sql("""
                insert into access_key (district_id, child_id, key)
                select district_id, child_id, :key from child where district_id = :district and child_id = :child
                on conflict do nothing""").param("key", fresh).param("district", districtId)
                .param("child", childId).update();
        return key(childId);
    }

    Optional<byte[]> key(UUID childId) {
        return jdbc.sql("select key from access_key where child_id = :child").param("child", childId)
                .query((row, n) -> row.getBytes(1)).optional();
    }

    /** The end of the chain, held until the transaction ends so that no other line comes between. */
    Head lockHead(int districtId) {
        jdbc.sql("insert into access_head (district_id, seq, digest) values (:district, 0, '') on conflict do nothing")
                .param("district", districtId).update();
        return jdbc.sql("select seq, digest from access_head where district_id = :district for update")
                .param("district", districtId).query((row, n) -> new Head(row.getLong(1), row.getString(2))).single();
    }

    void add(AccessChain.Line line, String digest) {
        jdbc.sql("""
                insert into access_entry (district_id, seq, at, adult_id, what, outcome, party, interest, grant_id,
                  child_digest, previous, digest)
                values (:district, :seq, :at, :adult, :what, :outcome, :party, :interest, :grant, :child, :previous,
                  :digest)""")
                .param("district", line.district()).param("seq", line.seq()).param("at", Timestamp.from(line.at()))
                .param("adult", line.adult()).param("what", line.what()).param("outcome", line.outcome())
                .param("party", line.party()).param("interest", line.interest()).param("grant", line.grant())
                .param("child", line.childDigest()).param("previous", line.previous()).param("digest", digest)
                .update();
    }

    void moveHead(int districtId, long seq, String digest) {
        jdbc.sql("update access_head set seq = :seq, digest = :digest where district_id = :district")
                .param("seq", seq).param("digest", digest).param("district", districtId).update();
    }

    /** Lines on a child, newest first. */
    List<AccessLine> lines(String childDigest, int most, ZoneId zone) {
        return jdbc.sql("""
                select e.seq, e.at, a.name, e.what, e.outcome = 'given', e.party, e.interest, g.reason, e.digest
                from access_entry e join adult a using (district_id, adult_id)
                  left join caseload_grant g on g.district_id = e.district_id and g.grant_id = e.grant_id
                where e.child_digest = :child order by e.seq desc limit :most""")
                .param("child", childDigest).param("most", most)
                .query((row, n) -> new AccessLine(row.getLong(1),
                        row.getTimestamp(2).toInstant().atZone(zone).toOffsetDateTime(), row.getString(3),
                        row.getString(4), row.getBoolean(5), row.getString(6), row.getString(7), row.getString(8),
                        row.getString(9))).list();
    }
}
