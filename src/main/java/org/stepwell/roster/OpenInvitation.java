package org.stepwell.roster;

import java.time.Instant;
import java.util.UUID;
import org.stepwell.roster.Invitations.Role;

/**
 * A code that was given out and not used yet.
 *
 * @param invitationId the invitation
 * @param forName for whom, as the inviter wrote it
 * @param role what the adult will be
 * @param expiresAt from then on the code opens nothing
 */
public record OpenInvitation(UUID invitationId, String forName, Role role, Instant expiresAt) {}
