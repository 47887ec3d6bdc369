package org.stepwell.observation;

import java.time.Clock;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.platform.security.SealKeyService;
import org.stepwell.platform.security.TabletPass;
import org.stepwell.platform.security.TabletPassService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.RosterService;

/** Gives a tablet its pass and its key, for an adult who is signed in; lists and ends them. */
@RestController
class PassController {
    private final TabletPassService passes;
    private final SealKeyService keys;
    private final RosterService roster;
    private final Clock clock;

    PassController(TabletPassService passes, SealKeyService keys, RosterService roster, Clock clock) {
        this.passes = passes;
        this.keys = keys;
        this.roster = roster;
        this.clock = clock;
    }

    /**
     * What a tablet asks with.
     *
     * @param classId class it will add looks for
     * @param device the tablet, by a number its browser made
     * @param label what the browser calls itself
     * @param keys ids of older keys that lie on it
     */
    record Asked(@com.fasterxml.jackson.annotation.JsonProperty("class") UUID classId, UUID device,
            @Nullable String label, @Nullable List<UUID> keys) {}

    /** The token is told once; the store keeps its hash. */
    @PostMapping("/api/table/pass")
    Map<String, Object> issue(@RequestBody Asked asked) {
        if (asked.classId() == null || roster.classes().stream().noneMatch(c -> c.classId().equals(asked.classId()))) {
            throw new NotVisible();
        }
        List<UUID> older = asked.keys() == null ? List.of() : asked.keys().stream().limit(50).toList();
        SealKeyService.Keys issuedKeys = keys.keys(asked.device(), older);
        TabletPassService.Issued issued =
                passes.issue(asked.classId(), asked.device(), asked.label() == null ? "" : asked.label());
        Map<String, String> raw = new LinkedHashMap<>();
        issuedKeys.keys().forEach((id, key) -> raw.put(id.toString(), Base64.getEncoder().encodeToString(key)));
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("pass", issued.token());
        answer.put("passUntil", issued.pass().expiresAt());
        answer.put("key", issuedKeys.keyId());
        answer.put("keyUntil", issuedKeys.expiresAt());
        answer.put("keys", raw);
        answer.put("serverTime", clock.instant());
        return answer;
    }

    @GetMapping("/api/table/passes")
    List<Map<String, Object>> list() {
        return passes.mine().stream().map(PassController::shown).toList();
    }

    @DeleteMapping("/api/table/passes/{pass}")
    ResponseEntity<Void> revoke(@PathVariable("pass") UUID pass) {
        if (!passes.revoke(pass)) {
            throw new NotVisible();
        }
        return ResponseEntity.noContent().build();
    }

    private static Map<String, Object> shown(TabletPass pass) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("pass", pass.passId());
        all.put("class", pass.classId());
        all.put("device", pass.deviceId());
        all.put("label", pass.label());
        all.put("created_at", pass.createdAt());
        all.put("expires_at", pass.expiresAt());
        all.put("revoked_at", pass.revokedAt());
        return all;
    }
}
