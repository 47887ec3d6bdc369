package org.stepwell.caseload;

import java.time.OffsetDateTime;

/**
 * Something an adult wrote about a child for the others around it.
 *
 * @param words as written
 * @param by name of the adult
 * @param at when, at the school
 */
public record Comment(String words, String by, OffsetDateTime at) {}
