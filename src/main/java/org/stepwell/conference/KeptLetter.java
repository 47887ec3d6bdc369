package org.stepwell.conference;

import java.time.LocalDate;
import java.util.List;
import org.stepwell.core.wording.home.HelpLetter;

/**
 * A kept version of a letter about extra help.
 *
 * @param version 1 for the first of its plan and language
 * @param approved whether an adult stands behind it; else it is a draft
 * @param on school day it was written on
 * @param letter what it says
 * @param confirmed words that usually stay at school and that the adult said were meant
 * @param by name of the adult
 */
public record KeptLetter(int version, boolean approved, LocalDate on, HelpLetter letter, List<String> confirmed,
        String by) {
    /** Copies the list. */
    public KeptLetter {
        confirmed = List.copyOf(confirmed);
    }
}
