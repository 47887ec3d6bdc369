package org.stepwell.platform.security;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.platform.security.TabletPassStore.WrappedKey;
import org.stepwell.platform.store.HomeSecrets;

/**
 * Keys that tablets seal with: AES-256-GCM with a nonce of 96 bits, as NIST SP 800-38D section 8.2.2 asks for random
 * nonces. One key per adult and tablet, a new one every week, so that a tablet always holds one with a week to go. The
 * server keeps each under a secret of its home and can open what a tablet sealed long after the tablet forgot the key.
 */
@Service
public class SealKeyService {
    private static final Logger LOG = LoggerFactory.getLogger(SealKeyService.class);
    private static final Duration RENEWED = Duration.ofDays(7);
    private static final int NONCE = 12;
    private static final int TAG_BITS = 128;

    private final TabletPassStore store;
    private final HomeSecrets secrets;
    private final CurrentAdult current;
    private final Clock clock;

    SealKeyService(TabletPassStore store, HomeSecrets secrets, CurrentAdult current, Clock clock) {
        this.store = store;
        this.secrets = secrets;
        this.current = current;
        this.clock = clock;
    }

    /**
     * Keys of the signed-in adult.
     *
     * @param keyId the one to seal with
     * @param expiresAt when the tablet drops it
     * @param keys by id, that one and those asked for as far as they are this adult's
     */
    public record Keys(UUID keyId, Instant expiresAt, Map<UUID, byte[]> keys) {}

    /** The key to seal with on a tablet from now on, and older ones that lie sealed there. */
    @Transactional
    public Keys keys(UUID deviceId, Collection<UUID> also) {
        SignedIn adult = current.get();
        Map<UUID, byte[]> keys = new LinkedHashMap<>();
        for (UUID id : also) {
            store.key(adult.adultId(), id).flatMap(this::unwrap).ifPresent(key -> keys.put(id, key));
        }
        Optional<WrappedKey> newest = store.newestKey(adult.adultId(), deviceId)
                .filter(key -> clock.instant().plus(RENEWED).isBefore(key.expiresAt()));
        Optional<byte[]> opened = newest.flatMap(this::unwrap);
        if (newest.isPresent() && opened.isPresent()) {
            keys.put(newest.get().keyId(), opened.get());
            return new Keys(newest.get().keyId(), newest.get().expiresAt(), keys);
        }
        UUID id = UUID.randomUUID();
        byte[] key = random(32);
        Instant until = clock.instant().plus(TabletPassService.HOLDS);
        byte[] nonce = random(NONCE);
        byte[] box = crypt(Cipher.ENCRYPT_MODE, secrets.key("seal"), nonce, bound(id), key);
        byte[] wrapped = Arrays.copyOf(nonce, nonce.length + box.length);
        System.arraycopy(box, 0, wrapped, nonce.length, box.length);
        store.addKey(adult.districtId(), id, adult.adultId(), deviceId, wrapped, until);
        keys.put(id, key);
        return new Keys(id, until, keys);
    }

    /**
     * Opens what a tablet of the signed-in adult sealed.
     *
     * @param bound text that was sealed together with the content and must be the same
     * @throws IllegalArgumentException when it cannot be opened, with a reason for the adult
     */
    @Transactional(readOnly = true)
    public byte[] open(UUID keyId, String bound, byte[] nonce, byte[] box) {
        byte[] key = store.key(current.get().adultId(), keyId).flatMap(this::unwrap)
                .orElseThrow(() -> new IllegalArgumentException("it was sealed with a key that this server does not "
                        + "have for you; open it on the tablet it was made on, signed in as the adult who made it"));
        try {
            return crypt(Cipher.DECRYPT_MODE, key, nonce, bound.getBytes(StandardCharsets.UTF_8), box);
        } catch (IllegalStateException broken) {
            throw new IllegalArgumentException("its seal is broken: it was altered or damaged on the tablet", broken);
        }
    }

    private Optional<byte[]> unwrap(WrappedKey key) {
        try {
            byte[] all = key.wrapped();
            return Optional.of(crypt(Cipher.DECRYPT_MODE, secrets.key("seal"), Arrays.copyOf(all, NONCE),
                    bound(key.keyId()), Arrays.copyOfRange(all, NONCE, all.length)));
        } catch (IllegalStateException otherSecret) {
            LOG.warn("A tablet's key was wrapped under another secret. Put the file secret-seal of the old home back.");
            return Optional.empty();
        }
    }

    private static byte[] bound(UUID keyId) {
        return keyId.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] random(int length) {
        byte[] bytes = new byte[length];
        new SecureRandom().nextBytes(bytes);
        return bytes;
    }

    private static byte[] crypt(int mode, byte[] key, byte[] nonce, byte[] bound, byte[] content) {
        try {
            Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
            cipher.init(mode, new SecretKeySpec(key, "AES"), new GCMParameterSpec(TAG_BITS, nonce));
            cipher.updateAAD(bound);
            return cipher.doFinal(content);
        } catch (GeneralSecurityException failed) {
            throw new IllegalStateException(failed);
        }
    }
}
