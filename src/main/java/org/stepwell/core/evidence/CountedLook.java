package org.stepwell.core.evidence;

import java.time.LocalDate;

/**
 * A look that counts as evidence, read as what it says.
 *
 * @param look the look as it was made
 * @param skill code of its skill
 * @param step 1-5, the step it speaks for; {@code not_yet} always speaks for step 1
 * @param atLeast {@code true}: objects were out, so it says "this step or above" and never "below the next one"
 */
public record CountedLook(Look look, String skill, int step, boolean atLeast) {

    /** The local date of the look. */
    public LocalDate day() {
        return look.day();
    }

    /** A hint or a model came first: it weighs less and is no valid look. */
    public boolean assisted() {
        return look.help() == Help.PROMPT || look.help() == Help.MODELLED;
    }

    /** Counts toward the minimums, evidence days and day steps. */
    public boolean valid() {
        return !assisted();
    }

    /** The child tried and could not start. */
    public boolean notYet() {
        return look.tags().contains(Tags.NOT_YET);
    }

    /** The way was good, the total slipped: the step holds. */
    public boolean slip() {
        return look.tags().contains(Tags.WRONG_TOTAL);
    }

    /** An adult who does not know the class looked: weighs less. */
    public boolean bySubstitute() {
        return look.tags().contains(Tags.SUBSTITUTE);
    }

    /** An item of a unit check: weighs half. */
    public boolean checkItem() {
        return look.kind() == Kind.UNIT_CHECK;
    }

    /** The child explained, in whatever way: said, showed, drew, or in the home language. Speaking is not required. */
    public boolean explained() {
        return Tags.EXPLAINING.stream().anyMatch(look.tags()::contains);
    }
}
