/** Who can see a child and who did, as a part of a screen. */
@NullMarked
package org.stepwell.privacy.ui;

import org.jspecify.annotations.NullMarked;
