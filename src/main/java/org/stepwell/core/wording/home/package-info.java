/**
 * What can a page say that goes home? Drafts from the evidence in plain words, the words that stay at school, and how
 * easy a text is to read.
 */
@NullMarked
package org.stepwell.core.wording.home;

import org.jspecify.annotations.NullMarked;
