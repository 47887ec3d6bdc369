/**
 * Is what the store holds still what was written, and do its walls stand? Reads every table; changes none.
 */
@NullMarked
package org.stepwell.integrity;

import org.jspecify.annotations.NullMarked;
