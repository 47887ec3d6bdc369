package org.stepwell.roster;

import java.time.ZoneId;
import java.util.Locale;
import org.stepwell.platform.security.PasswordRule;

/**
 * Something in a form that cannot be taken.
 *
 * @param field the field, by the name the form gives it
 * @param reason a short code: blank, long, signs, taken, zone, day, or a fault of {@link PasswordRule} in lower case
 */
public record EntryFault(String field, String reason) {
    /** Thrown where a form cannot be taken; nothing was stored. */
    public static final class Found extends IllegalArgumentException {
        private static final long serialVersionUID = 1L;
        private final transient EntryFault fault;

        Found(String field, String reason) {
            super(field + ": " + reason);
            this.fault = new EntryFault(field, reason);
        }

        /** Which field, and why. */
        public EntryFault fault() {
            return fault;
        }
    }

    /** A name without spaces around it. */
    static String name(String field, String text, int longest) {
        String name = text.strip();
        if (name.isEmpty()) {
            throw new Found(field, "blank");
        }
        if (name.length() > longest) {
            throw new Found(field, "long");
        }
        if (name.chars().anyMatch(Character::isISOControl)) {
            throw new Found(field, "signs");
        }
        return name;
    }

    /** A name to sign in with: no spaces within. */
    static String signIn(String field, String text) {
        String name = name(field, text, 100);
        if (name.chars().anyMatch(Character::isWhitespace) || name.chars().anyMatch(Character::isSpaceChar)) {
            throw new Found(field, "signs");
        }
        return name;
    }

    /** An IANA time zone, in the spelling of the list whatever case it was typed in. */
    static String zone(String field, String text) {
        String typed = text.strip();
        return ZoneId.getAvailableZoneIds().stream().filter(id -> id.equalsIgnoreCase(typed)).findFirst()
                .orElseThrow(() -> new Found(field, typed.isEmpty() ? "blank" : "zone"));
    }

    /** A password that may be chosen. */
    static void password(String field, String text, String signIn, String school) {
        PasswordRule.fault(text, signIn, school).ifPresent(fault -> {
            throw new Found(field, fault.name().toLowerCase(Locale.ROOT));
        });
    }
}
