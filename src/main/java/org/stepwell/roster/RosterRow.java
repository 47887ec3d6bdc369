package org.stepwell.roster;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.problem.Refused;

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
            throw new Refused("child.id");
        }
        if (givenName.length() > LONGEST_NAME || familyName.length() > LONGEST_NAME) {
            throw new Refused("child.name", LONGEST_NAME);
        }
        if (start != null && end != null && end.isBefore(start)) {
            throw new Refused("child.end", end, start);
        }
    }
}
