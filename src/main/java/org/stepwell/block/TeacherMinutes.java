package org.stepwell.block;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.MinutesLedger;
import org.stepwell.core.rotation.TeacherOrder;
import org.stepwell.grouping.Seating;

/** What the days of a block say about minutes at the teacher table: had, owed, and whose turn comes first. */
final class TeacherMinutes {
    private TeacherMinutes() {}

    /** Planned and held days of a ledger, from every version of each; who was away by day. */
    static List<MinutesLedger.Day> days(List<BlockDay> versions, Map<UUID, Seating> saved,
            Map<LocalDate, Set<String>> away) {
        Map<LocalDate, List<BlockDay>> byDay = versions.stream()
                .collect(Collectors.groupingBy(BlockDay::day, TreeMap::new, Collectors.toList()));
        List<MinutesLedger.Day> days = new ArrayList<>();
        byDay.forEach((day, all) -> days.add(new MinutesLedger.Day(day, all.getFirst().plan(), all.getLast().plan(),
                saved.get(all.getLast().seatingId()).groupOf(), away.getOrDefault(day, Set.of()))));
        return days;
    }

    /**
     * In which order the groups come to the teacher today.
     *
     * @param before days with a block so far
     */
    static List<TeacherOrder.Place> order(BlockPattern pattern, Seating groups, List<MinutesLedger.Day> days,
            LocalDate today, int before) {
        LocalDate monday = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        SortedMap<String, MinutesLedger.Line> owed = MinutesLedger.of(days.stream()
                .filter(d -> d.day().isBefore(today)).toList());
        int daysLeft = Math.max(1, (int) Arrays.stream(DayOfWeek.values()).filter(d -> d.compareTo(today.getDayOfWeek())
                >= 0 && pattern.rotationsOn(d) > 0).count());
        List<TeacherOrder.Group> all = new ArrayList<>();
        groups.groups().forEach(group -> {
            List<String> children = groups.groupOf().entrySet().stream().filter(e -> e.getValue() == group.number())
                    .map(Map.Entry::getKey).toList();
            if (children.isEmpty()) {
                return;
            }
            double had = children.stream().mapToLong(child -> days.stream().filter(d -> !d.day().isBefore(monday)
                    && d.day().isBefore(today) && !d.absent().contains(child) && d.groupOf().containsKey(child)
                    && d.held().teacherMinutes(d.groupOf().get(child)) > 0).count()).average().orElse(0);
            all.add(TeacherOrder.Group.of(group.number(), pattern.visitsOf(group.number()),
                    (int) Math.round(had), children, owed));
        });
        return TeacherOrder.of(all, daysLeft, pattern.rotations().size(), before);
    }

    /** Minutes owed to the children of each group, on average, by its number. */
    static Map<Integer, Double> owed(BlockPicture picture) {
        Map<Integer, Double> owed = new TreeMap<>();
        if (picture.groups() != null) {
            picture.groups().groupOf().entrySet().stream().collect(Collectors.groupingBy(Map.Entry::getValue,
                    Collectors.averagingInt(e -> Optional.ofNullable(picture.ledger().get(e.getKey()))
                            .map(MinutesLedger.Line::owed).orElse(0)))).forEach(owed::put);
        }
        return owed;
    }
}
