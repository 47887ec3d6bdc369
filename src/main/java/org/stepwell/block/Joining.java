package org.stepwell.block;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stepwell.core.grouping.Wish;
import org.stepwell.grouping.Seating;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Place;

/**
 * A group of which too few are there today, and the groups that it may sit with. Common practice, no source.
 *
 * @param group number of the group
 * @param here how many of it are there, 0 to {@value #FEW}
 * @param with groups in which nobody sits who is to sit apart from one of them; those of the same skill first, then the
 *        smaller ones; may be empty
 */
public record Joining(int group, int here, List<Integer> with) {
    /** A group of so many or fewer is too small to talk with each other. */
    public static final int FEW = 2;

    /** Copies the list. */
    public Joining {
        with = List.copyOf(with);
    }

    /** The groups that are too small, by number. */
    static List<Joining> of(Seating groups, Set<String> absent, List<Wish> wishes) {
        List<Joining> all = new ArrayList<>();
        for (Group one : groups.groups()) {
            int here = here(groups, one, absent);
            if (here <= FEW && groups.groupOf().containsValue(one.number())) {
                all.add(new Joining(one.number(), here, groups.groups().stream().filter(other -> other != one
                        && groups.groupOf().containsValue(other.number()) && mayMeet(groups.groupOf(), one.number(), other.number(), wishes))
                        .sorted(Comparator.comparing((Group other) -> !Objects.equals(other.skill(), one.skill()))
                                .thenComparing(other -> here(groups, other, absent)).thenComparing(Group::number))
                        .map(Group::number).toList()));
            }
        }
        return all;
    }

    private static int here(Seating groups, Group one, Set<String> absent) {
        return (int) groups.groupOf().entrySet().stream().filter(e -> e.getValue() == one.number()
                && !absent.contains(e.getKey())).count();
    }

    private static boolean mayMeet(Map<String, Integer> groupOf, int one, int other, List<Wish> wishes) {
        return wishes.stream().noneMatch(wish -> wish instanceof Wish.Apart apart
                && Set.of(one, other).equals(Set.copyOf(apart.children().stream()
                        .map(child -> groupOf.getOrDefault(child, 0)).toList())));
    }

    /** The places when the one group sits with the other today; numbers stay, and the one is empty. */
    static SortedMap<String, Place> places(Seating before, int from, int with) {
        SortedMap<String, Place> places = new TreeMap<>();
        before.places().forEach((child, place) -> places.put(child, new Place(place.group() == from ? with : place.group(),
                place.pinned(), place.reason())));
        return places;
    }
}
