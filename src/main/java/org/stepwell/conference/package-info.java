/**
 * What do parents get to read, and what was agreed with them? Table home_note; route
 * {@code GET /api/children/{child}/note.pdf}.
 */
@NullMarked
package org.stepwell.conference;

import org.jspecify.annotations.NullMarked;
