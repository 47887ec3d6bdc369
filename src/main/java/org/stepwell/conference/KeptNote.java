package org.stepwell.conference;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.stepwell.core.wording.home.HomeNote;

/**
 * A kept version of a page for home.
 *
 * @param version 1 for the first of its child and language
 * @param approved whether an adult stands behind it; else it is a draft
 * @param on school day it was written on
 * @param note what it says
 * @param confirmed words that usually stay at school and that the adult said were meant
 * @param by name of the adult
 * @param at when it was kept
 */
public record KeptNote(int version, boolean approved, LocalDate on, HomeNote note, List<String> confirmed, String by,
        Instant at) {
    /** Copies the list. */
    public KeptNote {
        confirmed = List.copyOf(confirmed);
    }
}
