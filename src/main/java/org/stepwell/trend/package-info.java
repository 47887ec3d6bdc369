/**
 * How does a child's way of working move over the weeks, drawn so that it also prints in black and white?
 */
@NullMarked
package org.stepwell.trend;

import org.jspecify.annotations.NullMarked;
