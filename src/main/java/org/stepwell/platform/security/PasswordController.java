package org.stepwell.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.platform.security.AccountService.Choice;
import org.stepwell.platform.security.SignInEvent.What;

/** Where passwords are chosen: the first own one for a one-time one, and another by an adult who is signed in. */
@RestController
class PasswordController {
    private final AccountService accounts;
    private final SignInAttempts attempts;
    private final OpenSessions open;
    private final SignInEvents events;
    private final HttpSessionSecurityContextRepository sessions = new HttpSessionSecurityContextRepository();

    PasswordController(AccountService accounts, SignInAttempts attempts, OpenSessions open, SignInEvents events) {
        this.accounts = accounts;
        this.attempts = attempts;
        this.open = open;
        this.events = events;
    }

    /**
     * 204 when set; 401 when name and one-time password do not fit; 400 with the reason; 429 after many tries. Does not
     * sign in: that is done with the new password.
     */
    @PostMapping("/login/first")
    ResponseEntity<Map<String, String>> first(@RequestParam String username, @RequestParam String password,
            @RequestParam String chosen, HttpServletRequest request) {
        String name = username.strip().toLowerCase(Locale.ROOT);
        if (!attempts.allow(name, request.getRemoteAddr())) {
            return tooMany();
        }
        Choice choice = accounts.choose(name, password, chosen);
        if (!(choice instanceof Choice.NoFit)) {
            attempts.forget(name, request.getRemoteAddr());
        }
        return answer(choice);
    }

    /**
     * 204 when changed, and this session goes on while every other one of the adult is over; 401 when nobody is signed
     * in or the former password is wrong, told apart by the reason; 400 with the reason; 429 after many tries.
     */
    @PostMapping("/login/password")
    ResponseEntity<Map<String, String>> change(@RequestParam String password, @RequestParam String chosen,
            HttpServletRequest request, HttpServletResponse response) {
        Optional<SignedIn> adult = CurrentAdult.find();
        if (adult.isEmpty()) {
            return ResponseEntity.status(HttpStatus.UNAUTHORIZED).body(Map.of("reason", "signed_out"));
        }
        String name = adult.get().signIn().toLowerCase(Locale.ROOT);
        if (!attempts.allow(name, request.getRemoteAddr())) {
            return tooMany();
        }
        Choice choice = accounts.change(adult.get(), password, chosen);
        if (choice instanceof Choice.Taken taken) {
            attempts.forget(name, request.getRemoteAddr());
            request.changeSessionId();
            SecurityContext context = SecurityContextHolder.createEmptyContext();
            context.setAuthentication(PasswordSignIn.session(adult.get(), taken.standing()));
            SecurityContextHolder.setContext(context);
            sessions.saveContext(context, request, response);
            Optional<OpenSession> here = OpenSession.of(request.getSession());
            here.ifPresent(one -> one.restsOn(taken.standing()));
            open.of(adult.get().adultId()).stream().filter(one -> here.filter(one::equals).isEmpty())
                    .forEach(OpenSession::end);
            events.note(adult.get(), What.PASSWORD_SET, request);
        }
        return answer(choice);
    }

    private static ResponseEntity<Map<String, String>> tooMany() {
        return ResponseEntity.status(HttpStatus.TOO_MANY_REQUESTS).header(HttpHeaders.RETRY_AFTER, "60").build();
    }

    private static ResponseEntity<Map<String, String>> answer(Choice choice) {
        return switch (choice) {
            case Choice.Taken taken -> ResponseEntity.noContent().build();
            case Choice.NoFit wrong -> ResponseEntity.status(HttpStatus.UNAUTHORIZED).body(Map.of("reason", "no_fit"));
            case Choice.Refused refused -> ResponseEntity.badRequest().body(
                    Map.of("reason", refused.fault().name().toLowerCase(Locale.ROOT)));
        };
    }
}
