/**
 * What must the Table page know to open, also without network? Gathers from the features to its left; no tables of its
 * own. Route: {@code GET /api/table}.
 */
@NullMarked
package org.stepwell.table;

import org.jspecify.annotations.NullMarked;
