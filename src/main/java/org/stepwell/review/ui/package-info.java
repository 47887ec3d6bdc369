/**
 * Screens: today, people and files.
 */
@NullMarked
package org.stepwell.review.ui;

import org.jspecify.annotations.NullMarked;
