/**
 * What do the rules suggest for a class, and what was decided? Tables tier_decision, concern, dose.
 */
@NullMarked
package org.stepwell.tier;

import org.jspecify.annotations.NullMarked;
