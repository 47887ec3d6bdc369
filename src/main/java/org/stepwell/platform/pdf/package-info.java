/**
 * How does a page become a PDF that a screen reader can read? Plain XHTML in, tagged PDF out.
 */
@NullMarked
package org.stepwell.platform.pdf;

import org.jspecify.annotations.NullMarked;
