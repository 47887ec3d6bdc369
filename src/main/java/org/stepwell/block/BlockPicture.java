package org.stepwell.block;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.MinutesLedger;
import org.stepwell.core.rotation.Stop;
import org.stepwell.core.rotation.TeacherOrder;
import org.stepwell.grouping.Seating;
import org.stepwell.roster.ChildRow;

/**
 * The block of a class on a day.
 *
 * @param day today
 * @param now time of day at the school
 * @param zone of the school
 * @param children the class, by name
 * @param pattern how the block runs; {@code null} when it was never set up
 * @param groups today's groups; {@code null} when none are saved
 * @param order who meets the teacher in which order, and why; empty without groups
 * @param running the day as it began and was changed; {@code null} before it begins
 * @param plan rotations of the running day, else those proposed; {@code null} without setup, groups or a block today
 * @param stops times of today in which the clock stood or stands still, in order
 * @param ledger minutes of the last {@value BlockService#LEDGER_DAYS} days by the school's own id
 * @param absent children away today, by the school's own id
 * @param few groups of which too few are there; empty once the block has begun
 */
public record BlockPicture(LocalDate day, LocalTime now, ZoneId zone, List<ChildRow> children, @Nullable BlockPattern pattern,
        @Nullable Seating groups, List<TeacherOrder.Place> order, @Nullable BlockDay running, @Nullable DayPlan plan,
        List<Stop> stops, SortedMap<String, MinutesLedger.Line> ledger, Set<String> absent,
        List<Joining> few) {
    /** Names of a group's children, those away left out. */
    public List<String> names(int group) {
        Map<String, Integer> groupOf = groups == null ? Map.of() : groups.groupOf();
        return children.stream().filter(c -> Integer.valueOf(group).equals(groupOf.get(c.schoolKey()))
                && !absent.contains(c.schoolKey())).map(ChildRow::label).toList();
    }

    /** Instant of a time of this day. */
    public Instant instant(LocalTime time) {
        return day.atTime(time).atZone(zone).toInstant();
    }

    /** Numbers of the groups that have children; who is joined to another group leaves the own one empty. */
    public List<Integer> numbers() {
        return groups == null ? List.of() : groups.groupOf().values().stream().distinct().sorted().toList();
    }

    /** Number of groups. */
    public int size() {
        return Optional.ofNullable(groups).map(g -> g.groups().size()).orElse(0);
    }
}
