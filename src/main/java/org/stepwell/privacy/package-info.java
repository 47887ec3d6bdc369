/**
 * Who may see which class and which child? Table caseload_grant.
 */
@NullMarked
package org.stepwell.privacy;

import org.jspecify.annotations.NullMarked;
