package org.stepwell.caseload;

import java.time.LocalDate;
import java.util.UUID;

/**
 * A child shared with an adult.
 *
 * @param grantId the record
 * @param childId the child
 * @param adultId with whom
 * @param adult name of that adult
 * @param plan whether plans and sessions are shared too
 * @param notes whether notes home are shared too
 * @param reason why, in the words of whoever shared
 * @param until last day
 * @param by who shared; empty for the sample
 */
public record Sharing(UUID grantId, UUID childId, UUID adultId, String adult, boolean plan, boolean notes,
        String reason, LocalDate until, String by) {}
