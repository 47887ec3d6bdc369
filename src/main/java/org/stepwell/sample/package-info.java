/**
 * How does the invented sample class get into an empty store, and out again without trace?
 */
@NullMarked
package org.stepwell.sample;

import org.jspecify.annotations.NullMarked;
