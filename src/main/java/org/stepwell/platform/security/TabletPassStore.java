package org.stepwell.platform.security;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Passes and wrapped keys of tablets. */
@Repository
class TabletPassStore {
    private static final String COLUMNS = """
            select pass_id, adult_id, class_id, device_id, label, created_at, expires_at, revoked_at from tablet_pass
            """;

    private final JdbcClient jdbc;

    TabletPassStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A key as it lies in the store. */
    record WrappedKey(UUID keyId, byte[] wrapped, Instant expiresAt) {}

    TabletPass addPass(int districtId, UUID adultId, UUID classId, UUID deviceId, String label, byte[] hash,
            Instant expiresAt) {
        return jdbc.sql("""
                insert into tablet_pass (district_id, adult_id, class_id, device_id, label, token_hash, expires_at)
                values (:district, :adult, :class, :device, :label, :hash, :expires)
                returning pass_id, adult_id, class_id, device_id, label, created_at, expires_at, revoked_at""")
                .param("district", districtId).param("adult", adultId).param("class", classId)
                .param("device", deviceId).param("label", label).param("hash", hash)
                .param("expires", Timestamp.from(expiresAt)).query((row, n) -> pass(row)).single();
    }

    Optional<TabletPass> pass(byte[] hash) {
        return jdbc.sql(COLUMNS + "where token_hash = :hash").param("hash", hash).query((row, n) -> pass(row))
                .optional();
    }

    List<TabletPass> passes(UUID adultId) {
        return jdbc.sql(COLUMNS + "where adult_id = :adult order by created_at desc, pass_id").param("adult", adultId)
                .query((row, n) -> pass(row)).list();
    }

    /** Ends a pass of this adult; says whether there was one to end. */
    boolean revoke(UUID adultId, UUID passId, Instant now) {
        return jdbc.sql("update tablet_pass set revoked_at = :now where adult_id = :adult and pass_id = :pass"
                + " and revoked_at is null").param("now", Timestamp.from(now)).param("adult", adultId)
                .param("pass", passId).update() == 1;
    }

    void addKey(int districtId, UUID keyId, UUID adultId, UUID deviceId, byte[] wrapped, Instant expiresAt) {
        jdbc.sql("""
                insert into tablet_key (district_id, key_id, adult_id, device_id, wrapped, expires_at)
                values (:district, :key, :adult, :device, :wrapped, :expires)""")
                .param("district", districtId).param("key", keyId).param("adult", adultId).param("device", deviceId)
                .param("wrapped", wrapped).param("expires", Timestamp.from(expiresAt)).update();
    }

    Optional<WrappedKey> newestKey(UUID adultId, UUID deviceId) {
        return jdbc.sql("""
                select key_id, wrapped, expires_at from tablet_key where adult_id = :adult and device_id = :device
                order by created_at desc, key_id limit 1""").param("adult", adultId).param("device", deviceId)
                .query((row, n) -> key(row)).optional();
    }

    Optional<WrappedKey> key(UUID adultId, UUID keyId) {
        return jdbc.sql("select key_id, wrapped, expires_at from tablet_key where adult_id = :adult and key_id = :key")
                .param("adult", adultId).param("key", keyId).query((row, n) -> key(row)).optional();
    }

    private static WrappedKey key(ResultSet row) throws SQLException {
        return new WrappedKey(row.getObject(1, UUID.class), row.getBytes(2), row.getTimestamp(3).toInstant());
    }

    private static TabletPass pass(ResultSet row) throws SQLException {
        Timestamp revoked = row.getTimestamp(8);
        return new TabletPass(row.getObject(1, UUID.class), row.getObject(2, UUID.class),
                row.getObject(3, UUID.class), row.getObject(4, UUID.class), row.getString(5),
                row.getTimestamp(6).toInstant(), row.getTimestamp(7).toInstant(),
                revoked == null ? null : revoked.toInstant());
    }
}
