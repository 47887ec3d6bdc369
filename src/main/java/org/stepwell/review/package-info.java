/**
 * What was decided for the class this week, by whom and on what? Tables review, review_choice, review_seal. Also the
 * screens that gather what other features know: today, people and files.
 */
@NullMarked
package org.stepwell.review;

import org.jspecify.annotations.NullMarked;
