package org.stepwell.core.rotation;

import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * The rotations of one day.
 *
 * @param turns in order of time
 */
public record DayPlan(List<Turn> turns) {

    /**
     * One rotation.
     *
     * @param starts when it begins
     * @param minutes working minutes in it
     * @param paused minutes in which it stood still
     * @param stations index of the station of group 1, 2 and so on, {@link #NOWHERE} for a group without children
     */
    public record Turn(LocalTime starts, int minutes, int paused, List<Integer> stations) {
        /** The station of a group of which nobody is there by itself. */
        public static final int NOWHERE = -1;

        /** Copies the list. */
        public Turn {
            stations = List.copyOf(stations);
        }

        /** When it ends. */
        public LocalTime ends() {
            return starts.plusMinutes(minutes + (long) paused);
        }

        /** Index of the station of a group; empty when it has no place in this rotation. */
        public OptionalInt stationOf(int group) {
            return group > stations.size() || stations.get(group - 1) == NOWHERE ? OptionalInt.empty()
                    : OptionalInt.of(stations.get(group - 1));
        }

        /** Number of the group at a station, from 1; empty when nobody is there. */
        public OptionalInt groupAt(int station) {
            int index = stations.indexOf(station);
            return index < 0 ? OptionalInt.empty() : OptionalInt.of(index + 1);
        }

        /** Number of the group at the teacher table. */
        public OptionalInt atTeacher() {
            return groupAt(BlockPattern.TEACHER_TABLE);
        }
    }

    /** Copies the list. */
    public DayPlan {
        turns = List.copyOf(turns);
    }

    /** Minutes that a group has at the teacher table. */
    public int teacherMinutes(int group) {
        return turns.stream().filter(t -> t.atTeacher().equals(OptionalInt.of(group))).mapToInt(Turn::minutes).sum();
    }

    /** Index of the rotation that runs at a time; the change before it belongs to it. Empty before and after. */
    public OptionalInt at(LocalTime time) {
        if (turns.isEmpty() || time.isBefore(turns.getFirst().starts())) {
            return OptionalInt.empty();
        }
        return IntStream.range(0, turns.size()).filter(i -> time.isBefore(turns.get(i).ends())).findFirst();
    }

    /** When the last rotation ends; a day without rotations ends at midnight. */
    public LocalTime ends() {
        return turns.isEmpty() ? LocalTime.MIDNIGHT : turns.getLast().ends();
    }

    /** Minutes between two times. */
    static int between(LocalTime from, LocalTime to) {
        return (int) Duration.between(from, to).toMinutes();
    }
}
