package org.stepwell.platform.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Proves to the database for whom a transaction works. The keys lie where only the owner reads; the run-time user can
 * hand a proof on but not make one, so a statement that slipped into a request names no other adult. Two digests with
 * a key each are the nested construction NMAC of Bellare, Canetti and Krawczyk (1996), from which HMAC comes (from memory).
 */
public final class TransactionProof {
    private static final Map<String, TransactionProof> BY_URL = new ConcurrentHashMap<>();

    private final OpenStore store;
    private volatile byte @Nullable [][] keys;

    private TransactionProof(OpenStore store) {
        this.store = store;
    }

    static void makeFor(OpenStore store) {
        BY_URL.put(store.url(), new TransactionProof(store));
    }

    /**
     * The proof for the database at the other end of a run-time connection.
     *
     * @param subject district and, after a slash, adult
     * @return 64 hexadecimal digits
     * @throws SQLException when the keys cannot be read, or the connection leads to no store that was opened here
     */
    public static String of(Connection runTime, String subject) throws SQLException {
        String url = runTime.getMetaData().getURL();
        TransactionProof proof = BY_URL.get(url);
        if (proof == null) {
            throw new SQLException("no opened store at " + url);
        }
        byte[][] keys = proof.keys();
        MessageDigest digest = sha256();
        digest.update(keys[1]);
        byte[] inner = digest.digest(subject.getBytes(StandardCharsets.UTF_8));
        digest.update(keys[0]);
        return HexFormat.of().formatHex(digest.digest(inner));
    }

    private byte[][] keys() throws SQLException {
        byte[][] known = keys;
        if (known != null) {
            return known;
        }
        try (Connection owner = store.ownerConnections().owner(); Statement statement = owner.createStatement();
                ResultSet row = statement.executeQuery("select outer_key, inner_key from stepwell_proof.key")) {
            if (!row.next()) {
                throw new SQLException("the store has no key for proofs");
            }
            byte[][] read = {row.getBytes(1), row.getBytes(2)};
            keys = read;
            return read;
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
