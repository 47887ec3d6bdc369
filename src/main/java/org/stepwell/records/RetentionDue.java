package org.stepwell.records;

import java.time.LocalDate;
import java.util.UUID;

/**
 * Records of one kind on one child whose time is over.
 *
 * @param kind kind
 * @param childId the child
 * @param schoolKey the school's own id
 * @param name given and family name
 * @param lastDay last day in any class
 * @param rows rows that would go or be rewritten, at least 1
 * @param held whether a request of the family is open, so that nothing goes (34 CFR 99.10 (e))
 */
public record RetentionDue(RetentionKind kind, UUID childId, String schoolKey, String name, LocalDate lastDay, int rows,
        boolean held) {}
