package org.stepwell.roster;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A child's stay in a class, now, to come or over.
 *
 * @param childId the child
 * @param schoolKey the school's own id
 * @param givenName name used at the table
 * @param familyName may be empty
 * @param grade as the school writes it
 * @param startsOn first day in the class
 * @param endsOn last day in the class; {@code null} = goes on
 */
public record Enrolled(UUID childId, String schoolKey, String givenName, String familyName, String grade,
        LocalDate startsOn, @Nullable LocalDate endsOn) {
    /** Given and family name. */
    public String name() {
        return (givenName + " " + familyName).strip();
    }
}
