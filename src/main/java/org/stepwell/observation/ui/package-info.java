/** The screen of what tablets hold and sent. */
@NullMarked
package org.stepwell.observation.ui;

import org.jspecify.annotations.NullMarked;
