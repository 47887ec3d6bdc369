package org.stepwell.platform.security;

import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;

/** Tells who is signed in on this thread and what day it is at that adult's school. */
@Component
public class CurrentAdult {
    private final Clock clock;

    CurrentAdult(Clock clock) {
        this.clock = clock;
    }

    /**
     * The adult of this thread.
     *
     * @throws IllegalStateException when nobody is signed in
     */
    public SignedIn get() {
        return find().orElseThrow(() -> new IllegalStateException("nobody is signed in"));
    }

    /** Today at the school of the adult. */
    public LocalDate today() {
        return LocalDate.now(clock.withZone(get().zone()));
    }

    /** The time of day at the school of the adult. */
    public LocalTime now() {
        return LocalTime.now(clock.withZone(get().zone()));
    }

    /** The pass this request came in by; empty when the adult has a session. */
    public Optional<TabletPass> pass() {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        return authentication != null && authentication.getDetails() instanceof TabletPass pass
                ? Optional.of(pass) : Optional.empty();
    }

    static Optional<SignedIn> find() {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        return authentication != null && authentication.getPrincipal() instanceof SignedIn adult
                ? Optional.of(adult) : Optional.empty();
    }
}
