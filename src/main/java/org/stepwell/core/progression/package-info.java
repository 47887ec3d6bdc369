/**
 * Skills in prerequisite order, each with five steps of strategy; what a progression file says, checked.
 */
@NullMarked
package org.stepwell.core.progression;

import org.jspecify.annotations.NullMarked;
