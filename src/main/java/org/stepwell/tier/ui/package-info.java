/**
 * Screens: class map, child, suggestions.
 */
@NullMarked
package org.stepwell.tier.ui;

import org.jspecify.annotations.NullMarked;
