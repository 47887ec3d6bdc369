/** How a teacher of the sample takes it out. */
@NullMarked
package org.stepwell.sample.ui;

import org.jspecify.annotations.NullMarked;
