/** Which class is looked at, and the panels for its children and adults. */
@NullMarked
package org.stepwell.roster.ui;

import org.jspecify.annotations.NullMarked;
