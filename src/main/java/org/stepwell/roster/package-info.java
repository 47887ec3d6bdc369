/**
 * Which adults and children are in which class, and how do they come in and go? Tables school, adult, classroom,
 * class_adult, child, enrolment, invitation; routes /login/set-up, /login/invited.
 */
@NullMarked
package org.stepwell.roster;

import org.jspecify.annotations.NullMarked;
