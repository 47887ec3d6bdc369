/**
 * Which unit and lesson is in hand, when is which skill due, which days are school days? Tables unit, pacing,
 * school_break, lesson, lesson_choice, table_task. Screens {@code unit}, {@code coverage}.
 */
@NullMarked
package org.stepwell.pacing;

import org.jspecify.annotations.NullMarked;
