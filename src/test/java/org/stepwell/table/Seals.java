package org.stepwell.table;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Keys of adults and what was sealed under them, by the JDK's own AES-GCM and not by the program's. */
final class Seals {
    private final JsonMapper json = new JsonMapper();
    private final Map<String, String> ids = new LinkedHashMap<>();
    private final Map<String, Map<String, String>> keys = new LinkedHashMap<>();

    synchronized String keyOf(String adult, String device) {
        return ids.computeIfAbsent(adult + " " + device, k -> {
            byte[] key = new byte[32];
            new SecureRandom().nextBytes(key);
            String id = UUID.randomUUID().toString();
            keys.computeIfAbsent(adult, a -> new LinkedHashMap<>()).put(id, Base64.getEncoder().encodeToString(key));
            return id;
        });
    }

    synchronized Map<String, String> keysOf(String adult) {
        return Map.copyOf(keys.getOrDefault(adult, Map.of()));
    }

    synchronized JsonNode open(String adult, JsonNode item) {
        String[] parts = item.get("sealed").asString().split("\\.");
        try {
            Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
            byte[] key = Base64.getDecoder().decode(keysOf(adult).getOrDefault(parts[1], ""));
            cipher.init(Cipher.DECRYPT_MODE, new SecretKeySpec(key, "AES"),
                    new GCMParameterSpec(128, Base64.getUrlDecoder().decode(parts[2])));
            cipher.updateAAD(("look " + item.get("id").asString()).getBytes(StandardCharsets.UTF_8));
            return json.readTree(cipher.doFinal(Base64.getUrlDecoder().decode(parts[3]))).get("record");
        } catch (GeneralSecurityException notTheirs) {
            throw new IllegalStateException(notTheirs);
        }
    }
}
