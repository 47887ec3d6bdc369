package org.stepwell.observation;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Look;

/**
 * A stored look with its history.
 *
 * @param look as it was made
 * @param childId the child seen
 * @param recordedAt when the server stored it
 * @param replacedBy newest look that stands in for it; {@code null} when it holds
 * @param withdrawnBy whether that one only takes it back
 * @param waiting stored, but waiting for the class's teacher since the adult had lost access
 */
public record ObservationLine(Look look, UUID childId, Instant recordedAt, @Nullable UUID replacedBy,
        boolean withdrawnBy, boolean waiting) {
    /** Whether the tablet's clock was off by two minutes or more, or the look claims to be from the future. */
    public boolean wildClock() {
        return TabletClock.wild(look, recordedAt);
    }
}
