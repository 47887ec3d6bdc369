package org.stepwell.tier;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.Tier;

/**
 * A decision on the tier of a child in a unit.
 *
 * @param asOf school day it was made for
 * @param from in force before
 * @param to in force since
 * @param choice accept, keep, other or start
 * @param suggested what the rules said; {@code null} when nothing was suggested
 * @param reason the teacher's words; may be empty
 * @param by name of the adult
 * @param at when
 */
public record DecisionLine(LocalDate asOf, Tier from, Tier to, String choice, @Nullable Tier suggested,
        String reason, String by, Instant at) {}
