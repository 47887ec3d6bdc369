/**
 * Reads and writes the CSV files: strict UTF-8, columns by name, every bad row with line, column and reason.
 */
@NullMarked
package org.stepwell.platform.csv;

import org.jspecify.annotations.NullMarked;
