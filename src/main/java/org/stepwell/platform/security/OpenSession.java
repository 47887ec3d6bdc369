package org.stepwell.platform.security;

import jakarta.servlet.http.HttpSession;
import jakarta.servlet.http.HttpSessionBindingEvent;
import jakarta.servlet.http.HttpSessionBindingListener;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One session of an adult, held by the session itself and known to {@link OpenSessions} for as long as that lasts. Its id
 * is a name to end it by, never one to get in by.
 */
public final class OpenSession implements HttpSessionBindingListener {
    /** Under which a session holds it. */
    public static final String KEY = "stepwell.session";
    /** A day's work, used or not; after that the adult signs in anew. Common practice (12 hours), no source. */
    static final Duration LONGEST = Duration.ofHours(12);

    private final UUID id = UUID.randomUUID();
    private final OpenSessions all;
    private final UUID adultId;
    private final String address;
    private final String device;
    private final Instant since;
    private volatile Standing standing;
    private volatile Instant lastUsed;
    private volatile boolean ended;

    OpenSession(OpenSessions all, UUID adultId, Standing standing, String address, String device, Instant since) {
        this.all = all;
        this.adultId = adultId;
        this.standing = standing;
        this.address = address;
        this.device = device;
        this.since = since;
        this.lastUsed = since;
    }

    /** That of a session; empty when nobody signed in with it. */
    static Optional<OpenSession> of(@Nullable HttpSession session) {
        return session != null && session.getAttribute(KEY) instanceof OpenSession open ? Optional.of(open)
                : Optional.empty();
    }

    /** Its name in the list. */
    public UUID id() {
        return id;
    }

    /** Network address of the sign-in. */
    public String address() {
        return address;
    }

    /** Browser and system; empty when unknown. */
    public String device() {
        return device;
    }

    /** When the adult signed in. */
    public Instant since() {
        return since;
    }

    /** When a request came last that somebody made, not the page by itself. */
    public Instant lastUsed() {
        return lastUsed;
    }

    UUID adultId() {
        return adultId;
    }

    /** Whether it may go on at this moment: nobody ended it, and its day is not over. */
    boolean goesOn(Instant now) {
        return !ended && now.isBefore(since.plus(LONGEST));
    }

    /** What it rests on: it is over, before its next request too, when the store says something newer. */
    Standing standing() {
        return standing;
    }

    void restsOn(Standing newer) {
        standing = newer;
    }

    void used(Instant now) {
        lastUsed = now;
    }

    void end() {
        ended = true;
        all.forget(this);
    }

    @Override
    public void valueBound(HttpSessionBindingEvent event) {
        all.add(this);
    }

    @Override
    public void valueUnbound(HttpSessionBindingEvent event) {
        all.forget(this);
    }
}
