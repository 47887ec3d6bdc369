/**
 * The screen on which pages for home are read, edited and approved.
 */
@NullMarked
package org.stepwell.conference.ui;

import org.jspecify.annotations.NullMarked;
