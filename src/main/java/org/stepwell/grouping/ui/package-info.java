/** Screens for groups: for the next days, and for tomorrow's table. Routes groups, groups/tomorrow. */
@NullMarked
package org.stepwell.grouping.ui;

import org.jspecify.annotations.NullMarked;
