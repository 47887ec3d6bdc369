package org.stepwell.core.rotation;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.stepwell.core.problem.Refused;

/**
 * How the math block runs in a class, as the teacher set it up.
 *
 * @param stations in order; the first is the teacher table
 * @param minutes length of a rotation, 3 to 60
 * @param change minutes between two rotations, 0 to 15
 * @param starts when the block begins on a usual day
 * @param rotations how many on each weekday, 1 to {@value #MOST_ROTATIONS}; a day that is missing has no block
 * @param visits visits to the teacher table wished for in a week by number of the group; a group that is missing comes
 *        on every day
 */
public record BlockPattern(List<Station> stations, int minutes, int change, LocalTime starts,
        Map<DayOfWeek, Integer> rotations, SortedMap<Integer, Integer> visits) {
    /** Index of the teacher table among the stations. */
    public static final int TEACHER_TABLE = 0;
    /** The most rotations of one day. */
    public static final int MOST_ROTATIONS = 5;
    private static final int MOST_STATIONS = 12;

    /**
     * Checks and copies.
     *
     * @throws Refused saying what is wrong and what is accepted
     */
    public BlockPattern {
        stations = List.copyOf(stations);
        if (stations.size() < 2 || stations.size() > MOST_STATIONS) {
            throw new Refused("block.stations.number", MOST_STATIONS, stations.size());
        }
        if (stations.stream().map(Station::name).distinct().count() < stations.size()) {
            throw new Refused("block.stations.twice");
        }
        if (minutes < 3 || minutes > 60) {
            throw new Refused("block.minutes", minutes);
        }
        if (change < 0 || change > 15) {
            throw new Refused("block.change", change);
        }
        EnumMap<DayOfWeek, Integer> days = new EnumMap<>(DayOfWeek.class);
        rotations.forEach((day, number) -> {
            if (number < 0 || number > MOST_ROTATIONS) {
                throw new Refused("block.rotations", MOST_ROTATIONS, number);
            }
            if (number > 0) {
                days.put(day, number);
            }
        });
        if (days.isEmpty()) {
            throw new Refused("block.rotations.none");
        }
        rotations = java.util.Collections.unmodifiableMap(days);
        visits = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(visits));
        if (visits.values().stream().anyMatch(a -> a < 1 || a > 5)) {
            throw new Refused("block.visits");
        }
    }

    /** Index of the first station where an adult of this name is; the teacher table when the name stands at none. */
    public int stationOf(String adult) {
        return IntStream.range(0, stations.size()).filter(i -> stations.get(i).adult().equalsIgnoreCase(adult.strip()))
                .findFirst().orElse(TEACHER_TABLE);
    }

    /** Rotations on a weekday; 0 when there is no block. */
    public int rotationsOn(DayOfWeek day) {
        return rotations.getOrDefault(day, 0);
    }

    /** Visits wished for a group in a week: as said, else one on each day with a block. */
    public int visitsOf(int group) {
        return Math.min(visits.getOrDefault(group, rotations.size()), rotations.size());
    }
}
