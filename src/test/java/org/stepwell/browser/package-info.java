/** The whole program in a real browser. */
@org.jspecify.annotations.NullMarked
package org.stepwell.browser;
