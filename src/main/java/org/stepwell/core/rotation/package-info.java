/**
 * Where is each group now, and who meets the teacher? Orders a block by a Latin square, mends it when time is lost, and
 * keeps the minutes at the teacher table that each child was to have and had.
 */
@NullMarked
package org.stepwell.core.rotation;

import org.jspecify.annotations.NullMarked;
