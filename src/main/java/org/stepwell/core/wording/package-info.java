/**
 * The only place where results become sentences, English and Spanish.
 */
@NullMarked
package org.stepwell.core.wording;

import org.jspecify.annotations.NullMarked;
