package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.List;
import java.util.SortedSet;
import org.jspecify.annotations.Nullable;

/** Something in the evidence that a teacher should hear with a suggestion. Facts only; the words are made elsewhere. */
public sealed interface Note {

    /** Fewer than two skills are due. */
    record TooFewDue(int due) implements Note {}

    /** The newest look is too old, or a break lies between. */
    record NotSeenLately(@Nullable LocalDate lastSeen, String skill, boolean help) implements Note {}

    /**
     * Came after the unit had begun, and too little was seen yet.
     *
     * @param notCounted looks that were marked as not valid
     */
    record Provisional(LocalDate joined, int looks, int days, int notCounted) implements Note {}

    /** Very few looks in the last weeks. */
    record HardlySeen(int looks, int schoolDays) implements Note {}

    /** Extra help was planned and not given; whether the child needs it cannot be told from this. */
    record HelpNotGiven(ChildState.Dose dose) implements Note {}

    /** A recorded concern or request waits for its answer. */
    record RequestOpen(ChildState.OpenRequest.Kind kind, LocalDate on) implements Note {}

    /**
     * Objects were out on every day, so that only "at least" is known.
     *
     * @param skills where this is so, by code
     * @param atLeast the lowest step shown on the newest day of each
     * @param days on how many days in all
     */
    record CubesHide(List<String> skills, int atLeast, int days) implements Note {}

    /**
     * Two adults see different things.
     *
     * @param tasksA numbers asked by the one, {@code tasksB} by the other; empty when not written or when they overlap
     */
    record ObserversDiffer(
            String skill, String a, int stepA, SortedSet<String> tasksA, String b, int stepB, SortedSet<String> tasksB)
            implements Note {}

    /** Items of a unit check and looks at the table disagree. */
    record CheckDisagrees(int right, int items, int daysMeeting, int days) implements Note {}

    /** A step is shown again and again and nothing above it was ever seen; explained without speaking. */
    record NothingAbove(String skill, int step, int days) implements Note {}

    /** Steps go up over the days and are short of what is expected. */
    record Growing(String skill, List<Integer> steps, int expected) implements Note {}

    /** The expected step rose, not the child fell. */
    record BarRose(String skill, int before, int now, LocalDate on) implements Note {}

    /**
     * A skill that others rest on is below what is expected: a reason for table time, whatever the tier.
     *
     * @param step usual on the last days
     */
    record KeystoneMissed(String skill, int step, int expected, List<String> neededBy) implements Note {}

    /** Beyond what is expected in most, and short of it in one; {@code step} is usual there on the last days. */
    record ButNot(List<String> ahead, String behind, int step, int expected, boolean mirrorWritten) implements Note {}

    /** Many of the class are in the same place: look at the lesson. */
    record ClassDip(@Nullable String skill, int children, int of) implements Note {}
}
