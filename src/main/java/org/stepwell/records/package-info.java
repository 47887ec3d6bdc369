/**
 * What does the school hold on one child, as one bundle to inspect? Reads every table with a child in it; has none of its
 * own.
 */
@NullMarked
package org.stepwell.records;

import org.jspecify.annotations.NullMarked;
