/**
 * How good are the decisions, where the truth is known: simulated classrooms, an observer who knows how they came
 * about as the ceiling, and usual rules of thumb as the floor.
 */
@NullMarked
package org.stepwell.bench;

import org.jspecify.annotations.NullMarked;
