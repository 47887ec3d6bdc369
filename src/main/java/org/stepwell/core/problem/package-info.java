/**
 * What is wrong, and how is it said to whoever has to mend it? Texts in {@code words/problem*.properties}.
 */
@NullMarked
package org.stepwell.core.problem;

import org.jspecify.annotations.NullMarked;
