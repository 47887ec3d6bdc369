package org.stepwell.platform.security;

import java.time.Instant;
import java.util.Locale;

/**
 * What happened at the sign-in of an adult.
 *
 * @param what what
 * @param address network address it came from
 * @param device browser and system, or empty
 * @param at when
 */
public record SignInEvent(What what, String address, String device, Instant at) {
    /** What happened. */
    public enum What {
        /** Name and password fitted. */
        SIGNED_IN,
        /** The password did not fit. */
        REFUSED,
        /** The adult went. */
        SIGNED_OUT,
        /** The adult chose another password. */
        PASSWORD_SET,
        /** One session was ended from the list. */
        SESSION_ENDED,
        /** All sessions but the one in use were ended from the list. */
        OTHERS_ENDED;

        /** Its word in the store and in the texts of screens. */
        public String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
