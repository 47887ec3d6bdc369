package org.stepwell.platform.security;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What lets a tablet add looks of one adult in one class, and read nothing.
 *
 * @param passId the pass
 * @param adultId whose looks it adds
 * @param classId class of the children it adds looks at
 * @param deviceId the tablet, by a number its browser made
 * @param label what the browser calls itself; may be empty
 * @param createdAt when it was issued
 * @param expiresAt from then on it is refused
 * @param revokedAt when the adult ended it; {@code null} when never
 */
public record TabletPass(UUID passId, UUID adultId, UUID classId, UUID deviceId, String label, Instant createdAt,
        Instant expiresAt, @Nullable Instant revokedAt) {
    /** Whether it lets looks in at that moment. */
    public boolean holds(Instant now) {
        return revokedAt == null && now.isBefore(expiresAt);
    }
}
