/**
 * What can be done from the command line, beside serving?
 */
@NullMarked
package org.stepwell.cli;

import org.jspecify.annotations.NullMarked;
