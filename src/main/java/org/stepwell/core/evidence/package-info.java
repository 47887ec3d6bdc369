/**
 * What the looks at one child say about each skill on a day: chances of the five steps, counts, dates, staleness.
 */
@NullMarked
package org.stepwell.core.evidence;

import org.jspecify.annotations.NullMarked;
