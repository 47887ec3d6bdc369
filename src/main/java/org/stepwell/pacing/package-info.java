/**
 * Which unit is in hand, when is which skill due, which days are school days? Tables unit, pacing, school_break.
 */
@NullMarked
package org.stepwell.pacing;

import org.jspecify.annotations.NullMarked;
