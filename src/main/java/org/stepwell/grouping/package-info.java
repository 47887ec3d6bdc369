/**
 * Who sits with whom on which day? Tables grouping_wish, seating, seating_group, seating_place.
 */
@NullMarked
package org.stepwell.grouping;

import org.jspecify.annotations.NullMarked;
