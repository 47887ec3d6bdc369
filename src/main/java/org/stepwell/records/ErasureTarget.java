package org.stepwell.records;

import java.util.UUID;

/**
 * A child that may be erased.
 *
 * @param districtId district
 * @param childId the child
 * @param schoolKey the school's own id
 * @param givenName given name
 * @param familyName family name, or empty
 * @param schools names of the schools it was in, in order, or empty
 */
public record ErasureTarget(int districtId, UUID childId, String schoolKey, String givenName, String familyName,
        String schools) {}
