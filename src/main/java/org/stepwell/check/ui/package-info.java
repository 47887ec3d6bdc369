/**
 * Screens of unit checks: blueprint, tap grid, results.
 */
@NullMarked
package org.stepwell.check.ui;

import org.jspecify.annotations.NullMarked;
