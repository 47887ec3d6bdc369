/**
 * From estimates to a suggested tier, with every condition measured against what was required.
 */
@NullMarked
package org.stepwell.core.tier;

import org.jspecify.annotations.NullMarked;
