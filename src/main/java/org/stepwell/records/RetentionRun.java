package org.stepwell.records;

import java.time.OffsetDateTime;

/**
 * Proof that records went because their time was over.
 *
 * @param kind what
 * @param children of how many children
 * @param rows rows removed or rewritten
 * @param by who said so
 * @param at when, at the school
 */
public record RetentionRun(RetentionKind kind, int children, int rows, String by, OffsetDateTime at) {}
