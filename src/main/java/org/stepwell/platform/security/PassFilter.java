package org.stepwell.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/** Lets a request in as the adult of its pass, for this request alone and whatever cookies came with it. */
final class PassFilter extends OncePerRequestFilter {
    static final String ROLE = "TABLET";

    private final TabletPassService passes;

    PassFilter(TabletPassService passes) {
        this.passes = passes;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        Optional.ofNullable(request.getHeader(TabletPassService.HEADER)).flatMap(passes::bearer).ifPresent(bearer -> {
            var held = UsernamePasswordAuthenticationToken.authenticated(bearer.adult(), null,
                    List.of(new SimpleGrantedAuthority("ROLE_" + ROLE)));
            held.setDetails(bearer.pass());
            context.setAuthentication(held);
        });
        SecurityContextHolder.setContext(context);
        chain.doFilter(request, response);
    }
}
