package org.stepwell.roster;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.stepwell.platform.security.SignInAttempts;

/** The two pages that a code opens to somebody who has no account: set-up of an empty store, and an invitation. */
@RestController
class DoorController {
    private static final String SET_UP = "set-up code";
    private static final String INVITED = "invitation code";

    private final SetUpService setUp;
    private final SetUpNotice notice;
    private final AdultService adults;
    private final SignInAttempts attempts;

    DoorController(SetUpService setUp, SetUpNotice notice, AdultService adults, SignInAttempts attempts) {
        this.setUp = setUp;
        this.notice = notice;
        this.adults = adults;
        this.attempts = attempts;
    }

    /** Whether there is something to set up. */
    @GetMapping("/login/set-up")
    Map<String, Boolean> state() {
        notice.sayLate();
        return Map.of("open", setUp.open());
    }

    /** 204 when made; 401 for a wrong code; 409 when the store is set up already; 400 with field and reason; 429. */
    @PostMapping("/login/set-up")
    ResponseEntity<Object> found(@RequestParam String code, @RequestParam String school, @RequestParam String zone,
            @RequestParam String room, @RequestParam String name, @RequestParam String username,
            @RequestParam String chosen, HttpServletRequest request) {
        if (!attempts.allow(SET_UP, request.getRemoteAddr())) {
            return tooMany();
        }
        SetUpService.Outcome outcome = setUp.found(
                new SetUpService.Wish(code, school, zone, room, name, username, chosen));
        return ResponseEntity.status(switch (outcome) {
            case MADE -> HttpStatus.NO_CONTENT;
            case WRONG_CODE -> HttpStatus.UNAUTHORIZED;
            case DONE_BEFORE -> HttpStatus.CONFLICT;
        }).build();
    }

    /** 204 when the account is made; 401 for a code that does not hold; 400 with field and reason; 429. */
    @PostMapping("/login/invited")
    ResponseEntity<Object> accept(@RequestParam String code, @RequestParam String name, @RequestParam String username,
            @RequestParam String chosen, HttpServletRequest request) {
        if (!attempts.allow(INVITED, request.getRemoteAddr())) {
            return tooMany();
        }
        if (!adults.accept(code, name, username, chosen)) {
            return ResponseEntity.status(HttpStatus.UNAUTHORIZED).build();
        }
        attempts.forget(INVITED, request.getRemoteAddr());
        return ResponseEntity.noContent().build();
    }

    @ExceptionHandler(EntryFault.Found.class)
    ResponseEntity<Object> wrong(EntryFault.Found found, HttpServletRequest request) {
        // The code was right, so this was no guess at it.
        attempts.forget(SET_UP, request.getRemoteAddr());
        attempts.forget(INVITED, request.getRemoteAddr());
        return ResponseEntity.badRequest().body(found.fault());
    }

    private static ResponseEntity<Object> tooMany() {
        return ResponseEntity.status(HttpStatus.TOO_MANY_REQUESTS).header(HttpHeaders.RETRY_AFTER, "60").build();
    }
}
