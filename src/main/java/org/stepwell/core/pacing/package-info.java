/**
 * From which day a skill is due and at which step, and which days are school days.
 */
@NullMarked
package org.stepwell.core.pacing;

import org.jspecify.annotations.NullMarked;
