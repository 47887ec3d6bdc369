package org.stepwell.core.tier;

import org.jspecify.annotations.Nullable;

/**
 * A requirement held against the evidence.
 *
 * @param required what was required
 * @param measured what was measured; {@code null} where it does not apply or cannot be known
 * @param held at how many reviews in a row it held, this one included; 0 when not now. Counted no further than required
 * @param met whether that is enough
 */
public record Condition(Requirement required, @Nullable Double measured, int held, boolean met) {}
