/**
 * How does the math block run today, and which group is where? Tables block_setup, block_station, block_day, block_turn,
 * block_absence; route /api/block.
 */
@NullMarked
package org.stepwell.block;

import org.jspecify.annotations.NullMarked;
