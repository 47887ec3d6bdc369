/**
 * Holds the invented class in {@code sample-class/}: how it was made, that it can be read, and what a review of it
 * says.
 */
@NullMarked
package org.stepwell.sample;

import org.jspecify.annotations.NullMarked;
