/**
 * Which adults and children are in which class? Tables school, adult, classroom, child, enrolment.
 */
@NullMarked
package org.stepwell.roster;

import org.jspecify.annotations.NullMarked;
