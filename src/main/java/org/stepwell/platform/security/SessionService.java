package org.stepwell.platform.security;

import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.platform.security.SignInEvent.What;

/** The open sessions of the signed-in adult, and what happened at the sign-in; of nobody else. */
@Service
public class SessionService {
    private static final int MOST_EVENTS = 50;

    private final OpenSessions sessions;
    private final SignInEvents events;
    private final AccountService accounts;
    private final CurrentAdult current;

    SessionService(OpenSessions sessions, SignInEvents events, AccountService accounts, CurrentAdult current) {
        this.sessions = sessions;
        this.events = events;
        this.accounts = accounts;
        this.current = current;
    }

    /** Open sessions, used last first. */
    public List<OpenSession> mine() {
        SignedIn adult = current.get();
        return sessions.of(adult.adultId()).stream().filter(one -> accounts.stands(adult, one.standing())).toList();
    }

    /** The newest fifty things that happened, newest first. */
    @Transactional(readOnly = true)
    public List<SignInEvent> events() {
        return events.of(current.get().adultId(), MOST_EVENTS);
    }

    /** Ends one of the adult's own sessions at its next request; says whether there was one to end. */
    public boolean end(UUID sessionId) {
        List<OpenSession> ended = mine().stream().filter(session -> session.id().equals(sessionId)).toList();
        ended.forEach(session -> ended(session, What.SESSION_ENDED));
        return !ended.isEmpty();
    }

    /** Ends every session of the adult but this one; says how many. */
    public int endOthers(UUID sessionId) {
        List<OpenSession> ended = mine().stream().filter(session -> !session.id().equals(sessionId)).toList();
        ended.forEach(session -> ended(session, What.OTHERS_ENDED));
        return ended.size();
    }

    /** The event tells which one was ended, by its address and device. */
    private void ended(OpenSession session, What what) {
        session.end();
        SignedIn adult = current.get();
        events.note(adult.districtId(), adult.adultId(), what, session.address(), session.device());
    }
}
