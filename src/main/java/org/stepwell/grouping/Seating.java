package org.stepwell.grouping;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Groups of a class as an adult saved them.
 *
 * @param seatingId the record
 * @param forOn first day it holds
 * @param kind until the next, for the first weeks, or for one day
 * @param groups what each group works on, from group 1 on
 * @param places children by the school's own id, those the reader may see
 * @param savedBy name of the adult
 * @param savedAt when
 */
public record Seating(UUID seatingId, LocalDate forOn, Kind kind, List<Group> groups, SortedMap<String, Place> places,
        String savedBy, Instant savedAt) {

    /** How long groups hold. */
    public enum Kind {
        /** Until others are saved. */
        GROUPS("groups"),
        /** As groups, mixed, in the first weeks of school. */
        START("start"),
        /** One day only; the day after, the groups before hold again. */
        DAY("day");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        String code() {
            return code;
        }

        static Kind of(String code) {
            return java.util.Arrays.stream(values()).filter(k -> k.code.equals(code)).findFirst().orElseThrow();
        }
    }

    /**
     * What one group works on.
     *
     * @param number of the group, from 1
     * @param skill code of the skill; {@code null} when not known
     * @param task number or task to offer, in the adult's words; may be empty
     * @param secondAdult whether a second adult meets it
     */
    public record Group(int number, @Nullable String skill, String task, boolean secondAdult) {}

    /**
     * A child's place.
     *
     * @param group number of the group, from 1
     * @param pinned whether the adult fixed it
     * @param reason why, as it stood when saved
     */
    public record Place(int group, boolean pinned, String reason) {}

    /** Copies the collections. */
    public Seating {
        groups = List.copyOf(groups);
        places = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(places));
    }

    /** Group of each child. */
    public SortedMap<String, Integer> groupOf() {
        SortedMap<String, Integer> groupOf = new TreeMap<>();
        places.forEach((child, place) -> groupOf.put(child, place.group()));
        return groupOf;
    }
}
