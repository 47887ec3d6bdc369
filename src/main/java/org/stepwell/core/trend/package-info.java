/**
 * Growth of a dated series: least squares, Theil-Sen, Mann-Kendall, goal line.
 */
@NullMarked
package org.stepwell.core.trend;

import org.jspecify.annotations.NullMarked;
