package org.stepwell.grouping;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.grouping.Aim;
import org.stepwell.core.grouping.GroupChild;
import org.stepwell.core.grouping.GroupingTask;
import org.stepwell.core.grouping.Wish;
import org.stepwell.core.progression.Progression;
import org.stepwell.roster.ChildRow;

/**
 * What groups of a class are made from, on a day.
 *
 * @param day today at the school
 * @param rows children of the class by name
 * @param children the same children as the search sees them, with tier
 * @param since by the school's own id: first day of the company the child still keeps
 * @param wishes wishes that hold
 * @param now groups that hold today
 * @param progression words for the skills
 * @param unit whether a unit is in hand; without, there is nothing to group by and groups are mixed
 */
public record GroupsPicture(LocalDate day, List<ChildRow> rows, List<GroupChild> children,
        SortedMap<String, LocalDate> since, List<Wish> wishes, Optional<Seating> now, Progression progression,
        boolean unit) {
    private static final int USUAL_SIZE = 5;

    /** Groups of five and four: as many as hold the class with no more than five in each. */
    public int usualGroups() {
        return Math.max(1, (children.size() + USUAL_SIZE - 1) / USUAL_SIZE);
    }

    /**
     * The task of sharing them out.
     *
     * @param groups how many
     * @param pinned group of each child whose place is fixed
     * @param secondAdult groups that meet a second adult
     */
    public GroupingTask task(int groups, Aim aim, Map<String, Integer> pinned, SortedSet<Integer> secondAdult) {
        List<Wish> all = new java.util.ArrayList<>(wishes);
        pinned.forEach((child, group) -> all.add(new Wish.InGroup(child, group)));
        return new GroupingTask(children, groups, all, aim, List.of(), secondAdult);
    }

    /** What each child is called, by the school's own id. */
    public Map<String, String> labels() {
        return rows.stream().collect(Collectors.toMap(ChildRow::schoolKey, ChildRow::label, (a, b) -> a,
                TreeMap::new));
    }

    /** The child of an id; {@code null} when not in the class. */
    public @Nullable GroupChild child(String id) {
        return children.stream().filter(c -> c.id().equals(id)).findFirst().orElse(null);
    }
}
