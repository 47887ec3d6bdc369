package org.stepwell.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.util.List;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/** Ends a session at its next request once the adult's password has changed or access has been ended. */
final class SessionCheck extends OncePerRequestFilter {
    /** Files that are the same for everybody. */
    private static final List<String> FILES = List.of("/look/", "/table/", "/sign-in/", "/VAADIN/build/",
            "/VAADIN/static/");

    private final AccountService accounts;

    SessionCheck(AccountService accounts) {
        this.accounts = accounts;
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
        if (held != null && held.getPrincipal() instanceof SignedIn adult
                && !(held.getDetails() instanceof Standing standing && accounts.stands(adult, standing))) {
            HttpSession session = request.getSession(false);
            if (session != null) {
                session.invalidate();
            }
            SecurityContextHolder.clearContext();
        }
        chain.doFilter(request, response);
    }
}
