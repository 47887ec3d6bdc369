/**
 * How much of the planned help was given, and when to look again after it ended?
 */
@NullMarked
package org.stepwell.core.plan;

import org.jspecify.annotations.NullMarked;
