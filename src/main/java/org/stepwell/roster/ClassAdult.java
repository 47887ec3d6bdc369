package org.stepwell.roster;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.roster.Invitations.Role;

/**
 * An adult who works in a class now, or leads its school.
 *
 * @param adultId the adult
 * @param signIn name to sign in with
 * @param name shown beside looks
 * @param role what the adult may do
 * @param since first day in the class; {@code null} for a lead
 */
public record ClassAdult(UUID adultId, String signIn, String name, Role role, @Nullable LocalDate since) {}
