package org.stepwell.platform.security;

import java.util.List;
import java.util.Locale;
import org.springframework.security.authentication.AuthenticationProvider;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.CredentialsExpiredException;
import org.springframework.security.authentication.LockedException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.web.authentication.WebAuthenticationDetails;
import org.springframework.stereotype.Component;

/** Turns name and password into a {@link SignedIn}. */
@Component
class PasswordSignIn implements AuthenticationProvider {
    private final AccountService accounts;
    private final SignInAttempts attempts;

    PasswordSignIn(AccountService accounts, SignInAttempts attempts) {
        this.accounts = accounts;
        this.attempts = attempts;
    }

    @Override
    public Authentication authenticate(Authentication offered) {
        String name = offered.getName().strip().toLowerCase(Locale.ROOT);
        String address = offered.getDetails() instanceof WebAuthenticationDetails details
                ? String.valueOf(details.getRemoteAddress()) : "";
        if (!attempts.allow(name, address)) {
            throw new LockedException("too many tries");
        }
        AccountStore.Account account = accounts.check(name, String.valueOf(offered.getCredentials()))
                .orElseThrow(() -> new BadCredentialsException("name and password do not fit"));
        if (account.oneTime()) {
            throw new CredentialsExpiredException("a one-time password is good for choosing an own one only");
        }
        attempts.forget(name, address);
        SignedIn adult = account.adult();
        return session(adult, account.standing());
    }

    /** What a session holds: who it is of and what it rests on. */
    static Authentication session(SignedIn adult, Standing standing) {
        UsernamePasswordAuthenticationToken token = UsernamePasswordAuthenticationToken.authenticated(adult, null,
                List.of(new SimpleGrantedAuthority("ROLE_ADULT")));
        token.setDetails(standing);
        return token;
    }

    @Override
    public boolean supports(Class<?> type) {
        return UsernamePasswordAuthenticationToken.class.isAssignableFrom(type);
    }
}
