/**
 * Screens that gather what other features know: today, people and files.
 */
@NullMarked
package org.stepwell.review;

import org.jspecify.annotations.NullMarked;
