/**
 * What did the children answer in a unit check, and what of it counts as evidence? Tables unit_check, check_item,
 * check_mark, check_sitting, check_counted, check_look. Routes: {@code /api/checks/...} for the grid, screens
 * {@code unit-check}.
 */
@NullMarked
package org.stepwell.check;

import org.jspecify.annotations.NullMarked;
