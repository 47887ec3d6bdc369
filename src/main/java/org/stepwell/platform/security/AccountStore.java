package org.stepwell.platform.security;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Sign-in names and password hashes. */
@Repository
class AccountStore {
    private final JdbcClient jdbc;

    AccountStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Place(int districtId, UUID adultId) {}

    record Account(SignedIn adult, String passwordHash, boolean oneTime, @Nullable Instant expiresAt,
            Standing standing, String school) {}

    Optional<Place> place(String name) {
        return jdbc.sql("select district_id, adult_id from sign_in where name = :name").param("name", name)
                .query((row, n) -> new Place(row.getInt(1), row.getObject(2, UUID.class))).optional();
    }

    boolean anybody() {
        return jdbc.sql("select exists (select 1 from sign_in)").query(Boolean.class).single();
    }

    /** Every district that has somebody who signs in. */
    List<Integer> districts() {
        return jdbc.sql("select distinct district_id from sign_in order by 1").query(Integer.class).list();
    }

    /** Whether the tables are there. */
    boolean made() {
        return jdbc.sql("select to_regclass('sign_in') is not null").query(Boolean.class).single();
    }

    Optional<Account> account(UUID adultId) {
        return jdbc.sql("""
                select a.district_id, a.adult_id, a.school_id, a.sign_in, a.name, s.time_zone, a.lead,
                       c.password_hash, c.one_time, c.expires_at, c.credential_id, s.name,
                       (select end_id from session_end e where e.adult_id = a.adult_id
                        order by e.ended_at desc limit 1)
                from adult a
                join school s using (district_id, school_id)
                join credential c using (district_id, adult_id)
                where a.adult_id = :adult
                order by c.created_at desc limit 1""").param("adult", adultId)
                .query((row, n) -> new Account(
                        new SignedIn(row.getInt(1), row.getObject(2, UUID.class), row.getObject(3, UUID.class),
                                row.getString(4), row.getString(5), ZoneId.of(row.getString(6)), row.getBoolean(7)),
                        row.getString(8), row.getBoolean(9),
                        row.getTimestamp(10) == null ? null : row.getTimestamp(10).toInstant(),
                        new Standing(row.getObject(11, UUID.class), row.getObject(13, UUID.class)),
                        row.getString(12)))
                .optional();
    }

    /** What a session of the adult would rest on if it began now. */
    Optional<Standing> standing(UUID adultId) {
        return jdbc.sql("""
                select (select credential_id from credential where adult_id = :adult order by created_at desc limit 1),
                       (select end_id from session_end where adult_id = :adult order by ended_at desc limit 1)
                where exists (select 1 from credential where adult_id = :adult)""").param("adult", adultId)
                .query((row, n) -> new Standing(row.getObject(1, UUID.class), row.getObject(2, UUID.class)))
                .optional();
    }

    void endSessions(int districtId, UUID adultId, String reason) {
        jdbc.sql("insert into session_end (district_id, adult_id, reason) values (:district, :adult, :reason)")
                .param("district", districtId).param("adult", adultId).param("reason", reason).update();
    }

    void addCredential(int districtId, UUID adultId, String hash, boolean oneTime, @Nullable Instant expiresAt) {
        jdbc.sql("""
                insert into credential (district_id, adult_id, password_hash, one_time, expires_at)
                values (:district, :adult, :hash, :once, :expires)""")
                .param("district", districtId).param("adult", adultId).param("hash", hash).param("once", oneTime)
                .param("expires", expiresAt == null ? null : java.sql.Timestamp.from(expiresAt)).update();
    }
}
