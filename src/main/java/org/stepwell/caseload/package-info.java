/**
 * Which children are shared with whom, and what do those who share them see and say? Tables caseload_grant (beside
 * {@code privacy}, which reads it), caseload_comment.
 */
@NullMarked
package org.stepwell.caseload;

import org.jspecify.annotations.NullMarked;
