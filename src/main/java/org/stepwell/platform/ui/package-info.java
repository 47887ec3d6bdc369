/**
 * The frame around every screen and the parts screens share.
 */
@NullMarked
package org.stepwell.platform.ui;

import org.jspecify.annotations.NullMarked;
