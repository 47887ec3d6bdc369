/**
 * Which skills, prerequisites and phrases does a class use? Tables progression, skill, prerequisite, phrase.
 */
@NullMarked
package org.stepwell.progression;

import org.jspecify.annotations.NullMarked;
