package org.stepwell.roster;

import java.time.LocalDate;
import java.util.UUID;

/**
 * A child in a class.
 *
 * @param childId the child
 * @param schoolKey the school's own id, what files and HTTP call child
 * @param givenName name used at the table
 * @param familyName may be empty
 * @param label given name, with as much of the family name as tells it from another child of the class
 * @param classId the class
 * @param startsOn first day in the class
 */
public record ChildRow(UUID childId, String schoolKey, String givenName, String familyName, String label,
        UUID classId, LocalDate startsOn) {
    ChildRow withLabel(String other) {
        return new ChildRow(childId, schoolKey, givenName, familyName, other, classId, startsOn);
    }
}
