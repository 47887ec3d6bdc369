/** Where all records on a child are asked for. */
@NullMarked
package org.stepwell.records.ui;

import org.jspecify.annotations.NullMarked;
