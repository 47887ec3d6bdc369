package org.stepwell.roster;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One line of a roster: a child in a class.
 *
 * @param child the school's own id, unique in the district
 * @param givenName name used at the table
 * @param familyName may be empty
 * @param grade as the school writes it
 * @param className class the line is about
 * @param start first day in the class; {@code null} = the day of the import
 * @param end last day in the class; {@code null} = goes on
 */
public record RosterRow(String child, String givenName, String familyName, String grade, String className,
        @Nullable LocalDate start, @Nullable LocalDate end) {
    private static final int LONGEST_NAME = 100;

    /** Checks the order of the dates, the lengths, and that the id has no control characters. */
    public RosterRow {
        if (child.chars().anyMatch(Character::isISOControl) || child.length() > 100) {
            throw new IllegalArgumentException("the id of a child has at most 100 characters and no control ones");
        }
        if (givenName.length() > LONGEST_NAME || familyName.length() > LONGEST_NAME) {
            throw new IllegalArgumentException("a name has at most " + LONGEST_NAME + " characters; shorten it");
        }
        if (start != null && end != null && end.isBefore(start)) {
            throw new IllegalArgumentException("end " + end + " is before start " + start);
        }
    }
}
