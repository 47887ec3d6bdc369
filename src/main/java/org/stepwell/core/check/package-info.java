/**
 * Statistics of a unit check: items, totals, reliability.
 */
@NullMarked
package org.stepwell.core.check;

import org.jspecify.annotations.NullMarked;
