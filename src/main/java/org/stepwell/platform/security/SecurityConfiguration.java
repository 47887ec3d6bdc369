package org.stepwell.platform.security;

import com.vaadin.flow.spring.security.VaadinSecurityConfigurer;
import java.time.Clock;
import javax.sql.DataSource;
import org.springframework.boot.autoconfigure.condition.ConditionalOnMissingBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import org.springframework.security.web.authentication.HttpStatusEntryPoint;
import org.springframework.security.web.authentication.session.NullAuthenticatedSessionStrategy;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfTokenRequestAttributeHandler;
import org.springframework.security.web.firewall.HttpFirewall;
import org.springframework.security.web.firewall.StrictHttpFirewall;
import org.springframework.transaction.PlatformTransactionManager;

/** The doors: static sign-in page, API that answers in status codes, screens. */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {
    private static final String STRICT = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
            + " connect-src 'self'; worker-src 'self'; manifest-src 'self'; object-src 'none'; base-uri 'none';"
            + " form-action 'self'; frame-ancestors 'none'";

    @Bean
    @ConditionalOnMissingBean
    Clock clock() {
        return Clock.systemUTC();
    }

    /** No text holds the character zero, which the store cannot keep; whoever sends it is told at the door. */
    @Bean
    HttpFirewall firewall() {
        StrictHttpFirewall firewall = new StrictHttpFirewall();
        firewall.setAllowedParameterValues(value -> value == null || value.indexOf('\u0000') < 0);
        return firewall;
    }

    @Bean
    PlatformTransactionManager transactionManager(DataSource dataSource) {
        return new DistrictTransactions(dataSource);
    }

    /** Argon2id with 19 MiB, two passes, one lane: a choice of the OWASP Password Storage Cheat Sheet (from memory). */
    @Bean
    PasswordEncoder passwordEncoder() {
        return encoder();
    }

    static PasswordEncoder encoder() {
        return new Argon2PasswordEncoder(16, 32, 1, 19 * 1024, 2);
    }

    /** Whatever carries a pass: it may add looks; to anything else it is a stranger, session cookie or not. */
    @Bean
    @Order(0)
    SecurityFilterChain passes(HttpSecurity http, TabletPassService passes) throws Exception {
        HttpStatusEntryPoint stranger = new HttpStatusEntryPoint(HttpStatus.UNAUTHORIZED);
        http.securityMatcher(request -> request.getHeader(TabletPassService.HEADER) != null)
                .authorizeHttpRequests(all -> all
                        .requestMatchers(HttpMethod.POST, "/api/observations").hasRole(PassFilter.ROLE)
                        .anyRequest().denyAll())
                .sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS)
                        .sessionAuthenticationStrategy(new NullAuthenticatedSessionStrategy()))
                .exceptionHandling(e -> e.authenticationEntryPoint(stranger)
                        .accessDeniedHandler((request, response, why) -> response.setStatus(401)))
                .requestCache(cache -> cache.disable())
                .logout(out -> out.disable())
                // A page of another site cannot set the header, so there is nothing for a token to prove.
                .csrf(csrf -> csrf.disable())
                .addFilterBefore(new PassFilter(passes), AnonymousAuthenticationFilter.class);
        http.headers(h -> h.contentSecurityPolicy(c -> c.policyDirectives(STRICT)));
        return http.build();
    }

    /** What a program calls: no redirect, ever. */
    @Bean
    @Order(1)
    SecurityFilterChain api(HttpSecurity http, AccountService accounts, OpenSessions sessions) throws Exception {
        http.securityMatcher("/api/**")
                .authorizeHttpRequests(all -> all.anyRequest().hasRole("ADULT"))
                .exceptionHandling(e -> e.authenticationEntryPoint(new HttpStatusEntryPoint(HttpStatus.UNAUTHORIZED)))
                .requestCache(cache -> cache.disable());
        tokens(http);
        checked(http, accounts, sessions);
        http.headers(h -> h.contentSecurityPolicy(c -> c.policyDirectives(STRICT)));
        return http.build();
    }

    /** Static pages, sign-in and sign-out. */
    @Bean
    @Order(2)
    SecurityFilterChain pages(HttpSecurity http, AccountService accounts, OpenSessions sessions, SignInAnswers answers)
            throws Exception {
        http.securityMatcher("/error", "/login", "/login/*", "/logout", "/set-up", "/sign-in/**", "/table", "/table/**",
                "/look/**", "/check/**", "/actuator/**")
                .authorizeHttpRequests(all -> all.anyRequest().permitAll())
                .requestCache(cache -> cache.disable())
                .formLogin(form -> form.loginPage("/login").loginProcessingUrl("/login")
                        .successHandler(answers).failureHandler(answers))
                .logout(out -> out.logoutUrl("/logout").logoutSuccessHandler(answers));
        tokens(http);
        checked(http, accounts, sessions);
        http.headers(h -> h.contentSecurityPolicy(c -> c.policyDirectives(STRICT))
                .referrerPolicy(r -> r.policy(
                        org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy
                                .NO_REFERRER)));
        return http.build();
    }

    /** The screens. Their engine still needs inline code, so the policy is looser here than on the pages above. */
    @Bean
    @Order(3)
    SecurityFilterChain screens(HttpSecurity http, AccountService accounts, OpenSessions sessions) throws Exception {
        http.with(VaadinSecurityConfigurer.vaadin(), vaadin -> vaadin.loginView("/login", "/login?out"));
        checked(http, accounts, sessions);
        http.headers(h -> h.contentSecurityPolicy(c -> c.policyDirectives(
                "default-src 'self'; script-src 'self' 'unsafe-inline' 'unsafe-eval'; style-src 'self' 'unsafe-inline';"
                        + " img-src 'self' data:; font-src 'self' data:; object-src 'none'; base-uri 'self';"
                        + " form-action 'self'; frame-ancestors 'none'")));
        return http.build();
    }

    private static void tokens(HttpSecurity http) throws Exception {
        CookieCsrfTokenRepository cookie = CookieCsrfTokenRepository.withHttpOnlyFalse();
        cookie.setCookieCustomizer(c -> c.sameSite("Lax"));
        http.csrf(csrf -> csrf.csrfTokenRepository(cookie)
                .csrfTokenRequestHandler(new CsrfTokenRequestAttributeHandler()));
        http.addFilterBefore(new FreshToken(), AuthorizationFilter.class);
    }

    private static void checked(HttpSecurity http, AccountService accounts, OpenSessions sessions) {
        http.addFilterBefore(new SessionCheck(accounts, sessions), AnonymousAuthenticationFilter.class);
    }
}
