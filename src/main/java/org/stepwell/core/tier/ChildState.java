package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What was decided and written about a child, beside the looks.
 *
 * @param child the school's own id
 * @param tier in force
 * @param since first day on which it was in force; {@code null} = from the start
 * @param reviews days of earlier reviews of the class, in order
 * @param joined the day a child came who was not there from the start of the unit: provisional until enough was seen;
 *     {@code null} for all others
 * @param dose sessions of extra help; {@code null} where no plan exists
 * @param open concerns and requests that adults recorded and nobody has answered
 */
public record ChildState(
        String child,
        Tier tier,
        @Nullable LocalDate since,
        List<LocalDate> reviews,
        @Nullable LocalDate joined,
        @Nullable Dose dose,
        List<OpenRequest> open) {

    /**
     * Sessions of extra help since the plan began.
     *
     * @param planned how many should have been given by now, at least 1
     * @param given how many were given
     * @param missedBySchool not given because of the school: an adult was out, an event
     * @param missedByChild not given because the child was absent
     */
    public record Dose(int planned, int given, int missedBySchool, int missedByChild) {
        /** Checks the numbers. */
        public Dose {
            if (planned < 1 || given < 0 || missedBySchool < 0 || missedByChild < 0) {
                throw new IllegalArgumentException("sessions must be 0 or more, and at least 1 planned: planned "
                        + planned + ", given " + given + ", missed " + missedBySchool + " and " + missedByChild);
            }
        }

        /** Given of planned, 0 to 1. */
        public double share() {
            return Math.min(1.0, (double) given / planned);
        }
    }

    /** Something an adult wrote down that waits for an answer. */
    public record OpenRequest(Kind kind, LocalDate on) {
        /** What it is. */
        public enum Kind {
            /** An adult is concerned. */
            CONCERN,
            /** Somebody asked for an evaluation. */
            EVALUATION
        }
    }

    /** Copies the lists; reviews in order and once each. */
    public ChildState {
        reviews = List.copyOf(new TreeSet<>(reviews));
        open = List.copyOf(open);
    }

    /** On level from the start, never reviewed, without plan or request. */
    public static ChildState start(String child) {
        return new ChildState(child, Tier.ON_LEVEL, null, List.of(), null, null, List.of());
    }

    /** The same child after a review on this day put the tier in force. */
    public ChildState reviewed(LocalDate day, Tier decided) {
        TreeSet<LocalDate> days = new TreeSet<>(reviews);
        days.add(day);
        LocalDate from = decided == tier ? since : day;
        return new ChildState(child, decided, from, List.copyOf(days), joined, dose, open);
    }
}
