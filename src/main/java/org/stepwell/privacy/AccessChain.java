package org.stepwell.privacy;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.UUID;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.jspecify.annotations.Nullable;

/** Digests of the record of access: SHA-256 (FIPS 180-4) along the chain, HMAC (RFC 2104) in place of a child. */
final class AccessChain {
    private AccessChain() {
    }

    /** What a line says, apart from its digest. */
    record Line(int district, long seq, Instant at, UUID adult, String what, String outcome, String party,
            String interest, @Nullable UUID grant, String childDigest, String previous) {
        String digest() {
            String all = String.join("|", Integer.toString(district), Long.toString(seq),
                    Long.toString(ChronoUnit.MICROS.between(Instant.EPOCH, at)), adult.toString(), what, outcome,
                    party, interest, grant == null ? "-" : grant.toString(), childDigest, previous);
            try {
                return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256")
                        .digest(all.getBytes(StandardCharsets.UTF_8)));
            } catch (GeneralSecurityException missing) {
                throw new IllegalStateException(missing);
            }
        }
    }

    static String child(byte[] key, UUID childId) {
        return hmac(key, childId.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** HMAC-SHA-256 (RFC 2104, FIPS 180-4) in hex. */
    static String hmac(byte[] key, byte[] text) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(key, "HmacSHA256"));
            return HexFormat.of().formatHex(mac.doFinal(text));
        } catch (GeneralSecurityException missing) {
            throw new IllegalStateException(missing);
        }
    }
}
