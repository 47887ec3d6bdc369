package org.stepwell.core.rotation;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.DayPlan.Turn;

/**
 * The order of a day's rotations: no two groups at one station, no group twice at one before it was at all others. With as
 * many rotations and groups as stations it is a Latin square, here the cyclic one: station = (rotation - place) mod stations
 * (Keedwell and Dénes, Latin Squares and their Applications, 2nd ed. 2015; the book from memory).
 */
public final class Rotations {
    private Rotations() {}

    /**
     * Orders a day.
     *
     * @param pattern stations, minutes and change
     * @param number of rotations, at least 1
     * @param order every group with children once, by number from 1, in the order in which they meet the teacher; those
     *        for whom there is no rotation left work at the other stations; a number that is missing is nowhere
     * @param shift by how many places the other stations are turned against the teacher table, so that days differ
     * @param starts when the first rotation begins
     * @throws Refused when there are more groups than stations, or the block would run past midnight
     */
    public static DayPlan plan(BlockPattern pattern, int number, List<Integer> order, int shift, LocalTime starts) {
        int stations = pattern.stations().size();
        if (order.size() > stations) {
            throw new Refused("block.stations.few", order.size(), stations);
        }
        long length = (long) number * (pattern.minutes() + pattern.change());
        if (starts.toSecondOfDay() / 60 + length >= 24 * 60) {
            throw new Refused("block.late");
        }
        int last = order.stream().mapToInt(Integer::intValue).max().orElse(0);
        List<Turn> turns = new ArrayList<>();
        for (int turn = 0; turn < number; turn++) {
            Integer[] at = new Integer[last];
            Arrays.fill(at, Turn.NOWHERE);
            for (int place = 0; place < order.size(); place++) {
                at[order.get(place) - 1] = turned(Math.floorMod(turn - place, stations), shift, stations);
            }
            turns.add(new Turn(starts.plusMinutes((long) turn * (pattern.minutes() + pattern.change())),
                    pattern.minutes(), 0, List.of(at)));
        }
        return new DayPlan(turns);
    }

    /** The teacher table stays where it is; the others move on. */
    private static int turned(int station, int shift, int stations) {
        return station == BlockPattern.TEACHER_TABLE ? station : 1 + Math.floorMod(station - 1 + shift, stations - 1);
    }
}
