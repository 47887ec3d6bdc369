package org.stepwell.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.CredentialsExpiredException;
import org.springframework.security.authentication.LockedException;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.authentication.AuthenticationSuccessHandler;
import org.springframework.security.web.authentication.logout.LogoutSuccessHandler;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.stereotype.Component;
import org.stepwell.platform.security.SignInEvent.What;

/** Where signing in and out leads to; writes down that it happened and keeps the list of open sessions. */
@Component
class SignInAnswers implements AuthenticationSuccessHandler, AuthenticationFailureHandler, LogoutSuccessHandler {
    private final OpenSessions sessions;
    private final SignInEvents events;

    SignInAnswers(OpenSessions sessions, SignInEvents events) {
        this.sessions = sessions;
        this.events = events;
    }

    @Override
    public void onAuthenticationSuccess(HttpServletRequest request, HttpServletResponse response, Authentication signedIn)
            throws IOException {
        SignedIn adult = (SignedIn) signedIn.getPrincipal();
        OpenSession open = new OpenSession(sessions, adult.adultId(), (Standing) signedIn.getDetails(),
                request.getRemoteAddr(), Device.named(request.getHeader(HttpHeaders.USER_AGENT)), sessions.now());
        request.getSession().setAttribute(OpenSession.KEY, open);
        events.note(adult, What.SIGNED_IN, request);
        if (request.getAttribute(CsrfToken.class.getName()) instanceof CsrfToken token) {
            token.getToken();
        }
        response.sendRedirect(request.getContextPath() + "/");
    }

    @Override
    public void onAuthenticationFailure(HttpServletRequest request, HttpServletResponse response,
            AuthenticationException why) throws IOException {
        if (why instanceof LockedException) {
            response.setHeader(HttpHeaders.RETRY_AFTER, "60");
            response.sendError(HttpStatus.TOO_MANY_REQUESTS.value());
        } else if (why instanceof CredentialsExpiredException) {
            response.sendRedirect(request.getContextPath() + "/login?first");
        } else {
            if (why instanceof BadCredentialsException && request.getParameter("username") instanceof String name) {
                events.refused(name, request);
            }
            response.sendRedirect(request.getContextPath() + "/login?error");
        }
    }

    @Override
    public void onLogoutSuccess(HttpServletRequest request, HttpServletResponse response,
            @Nullable Authentication left) throws IOException {
        if (left != null && left.getPrincipal() instanceof SignedIn adult) {
            events.note(adult, What.SIGNED_OUT, request);
        }
        response.sendRedirect(request.getContextPath() + "/login?out");
    }
}
