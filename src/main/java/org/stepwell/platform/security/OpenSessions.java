package org.stepwell.platform.security;

import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.stereotype.Component;

/** Every session of this server somebody signed in with. Sessions live in its memory, and so does this. */
@Component
class OpenSessions {
    private final Map<UUID, OpenSession> open = new ConcurrentHashMap<>();
    private final Clock clock;

    OpenSessions(Clock clock) {
        this.clock = clock;
    }

    Instant now() {
        return clock.instant();
    }

    void add(OpenSession session) {
        open.put(session.id(), session);
    }

    void forget(OpenSession session) {
        open.remove(session.id());
    }

    /** Those of an adult that go on, used last first. */
    List<OpenSession> of(UUID adultId) {
        Instant now = now();
        return open.values().stream().filter(session -> session.adultId().equals(adultId) && session.goesOn(now))
                .sorted(Comparator.comparing(OpenSession::lastUsed).reversed()).toList();
    }
}
