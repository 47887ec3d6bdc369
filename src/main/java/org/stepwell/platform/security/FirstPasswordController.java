package org.stepwell.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Locale;
import java.util.Map;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Where a one-time password is changed into an own one. Does not sign in: that is done with the new password. */
@RestController
class FirstPasswordController {
    private final AccountService accounts;
    private final SignInAttempts attempts;

    FirstPasswordController(AccountService accounts, SignInAttempts attempts) {
        this.accounts = accounts;
        this.attempts = attempts;
    }

    /** 204 when set; 401 when name and one-time password do not fit; 400 with the reason; 429 after many tries. */
    @PostMapping("/login/first")
    ResponseEntity<Map<String, String>> choose(@RequestParam String username, @RequestParam String password,
            @RequestParam String chosen, HttpServletRequest request) {
        String name = username.strip().toLowerCase(Locale.ROOT);
        if (!attempts.allow(name, request.getRemoteAddr())) {
            return ResponseEntity.status(HttpStatus.TOO_MANY_REQUESTS).header(HttpHeaders.RETRY_AFTER, "60").build();
        }
        AccountService.Choice choice = accounts.choose(name, password, chosen);
        if (choice == AccountService.Choice.NO_FIT) {
            return ResponseEntity.status(HttpStatus.UNAUTHORIZED).build();
        }
        attempts.forget(name, request.getRemoteAddr());
        return choice == AccountService.Choice.SET ? ResponseEntity.noContent().build()
                : ResponseEntity.badRequest().body(Map.of("reason", choice.name().toLowerCase(Locale.ROOT)));
    }
}
