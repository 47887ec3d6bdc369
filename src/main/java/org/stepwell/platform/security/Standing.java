package org.stepwell.platform.security;

import java.io.Serializable;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a session rests on: it is over as soon as the store says something newer.
 *
 * @param credentialId the password it was begun with
 * @param endId newest order to end the adult's sessions at that time; {@code null} when there was none
 */
record Standing(UUID credentialId, @Nullable UUID endId) implements Serializable {}
