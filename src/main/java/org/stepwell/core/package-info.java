/**
 * What decides, as plain Java: no Spring, no Vaadin, no SQL, no clock. Everything here is a function of its arguments.
 *
 * <p>Packages use only those to their left: progression, pacing, evidence, tier, wording; trend, check and grouping
 * stand alone.
 */
@NullMarked
package org.stepwell.core;

import org.jspecify.annotations.NullMarked;
