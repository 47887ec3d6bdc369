package org.stepwell.privacy;

import java.nio.charset.StandardCharsets;
import org.springframework.stereotype.Component;
import org.stepwell.platform.store.HomeSecrets;

/**
 * What stays of the school's own id of an erased child: an HMAC under a secret that lies in the home and never in the
 * store. With it a look that comes late is known; a copy of the store, however short such ids are, names nobody.
 */
@Component
public final class ErasedIds {
    private static final String SECRET = "erased";

    private final HomeSecrets secrets;

    /** Over the secrets of a home. */
    public ErasedIds(HomeSecrets secrets) {
        this.secrets = secrets;
    }

    /** The digest of an id in a district, 64 hex digits. */
    public String digest(int districtId, String schoolKey) {
        return AccessChain.hmac(secrets.key(SECRET), (districtId + "|" + schoolKey).getBytes(StandardCharsets.UTF_8));
    }
}
