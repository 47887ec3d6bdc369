/** How a teacher says, without a file, which skill is due from which day. */
@NullMarked
package org.stepwell.pacing.ui;

import org.jspecify.annotations.NullMarked;
