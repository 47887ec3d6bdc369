/** The trend of one child as a part of a screen: drawing, numbers, rules against a goal, and all of it as a table. */
@NullMarked
package org.stepwell.trend.ui;

import org.jspecify.annotations.NullMarked;
