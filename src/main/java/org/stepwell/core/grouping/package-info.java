/**
 * Who sits with whom for the next days? Proposes groups from focus skill, step and present support, keeps every wish
 * or names those that cannot be kept together. The solver library stays inside: no signature shows it.
 */
@NullMarked
package org.stepwell.core.grouping;

import org.jspecify.annotations.NullMarked;
