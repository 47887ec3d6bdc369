package org.stepwell.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Ends a session at its next request once the adult's password has changed, access or the session has been ended, or its
 * day is over.
 */
final class SessionCheck extends OncePerRequestFilter {
    /** Files that are the same for everybody. */
    private static final List<String> FILES = List.of("/look/", "/table/", "/sign-in/", "/VAADIN/build/",
            "/VAADIN/static/");

    /** How a page of the screens says that it is still open, in its query. */
    private static final String HEARTBEAT = "v-r=heartbeat";

    private final AccountService accounts;
    private final OpenSessions sessions;

    SessionCheck(AccountService accounts, OpenSessions sessions) {
        this.accounts = accounts;
        this.sessions = sessions;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String path = request.getRequestURI().substring(request.getContextPath().length());
        return request.getMethod().equals("GET") && FILES.stream().anyMatch(path::startsWith);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Authentication held = SecurityContextHolder.getContext().getAuthentication();
        HttpSession session = request.getSession(false);
        if (held != null && held.getPrincipal() instanceof SignedIn adult && !goesOn(request, session, held, adult)) {
            if (session != null) {
                session.invalidate();
            }
            SecurityContextHolder.clearContext();
        }
        chain.doFilter(request, response);
    }

    private boolean goesOn(HttpServletRequest request, @Nullable HttpSession session, Authentication held,
            SignedIn adult) {
        Optional<OpenSession> open = OpenSession.of(session).filter(one -> one.goesOn(sessions.now()));
        if (open.isEmpty() || !(held.getDetails() instanceof Standing standing && accounts.stands(adult, standing))) {
            return false;
        }
        if (!String.valueOf(request.getQueryString()).contains(HEARTBEAT)) {
            open.get().used(sessions.now());
        }
        return true;
    }
}
