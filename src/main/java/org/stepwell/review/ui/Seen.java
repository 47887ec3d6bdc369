package org.stepwell.review.ui;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.stepwell.core.evidence.Look;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;

/**
 * Who was seen lately. A look taken back was no look.
 *
 * @param children of the class, by name
 * @param notThisWeek those without a look since Monday
 * @param counts looks in the last {@link #WEEKS} weeks by school id
 */
record Seen(List<OneChild> children, List<OneChild> notThisWeek, Map<String, Long> counts) {
    /** How far back the fewest looks are counted. */
    static final int WEEKS = 3;

    static Seen in(ClassPicture picture) {
        LocalDate monday = picture.day().with(DayOfWeek.MONDAY);
        LocalDate from = picture.day().minusWeeks(WEEKS);
        Set<java.util.UUID> gone = picture.looks().stream().map(Look::replaces).filter(id -> id != null)
                .collect(Collectors.toSet());
        List<Look> looks = picture.looks().stream().filter(l -> !l.withdrawn() && l.step() != null
                && !gone.contains(l.id()) && !l.day().isAfter(picture.day())).toList();
        Set<String> week = looks.stream().filter(l -> !l.day().isBefore(monday)).map(Look::child)
                .collect(Collectors.toSet());
        return new Seen(picture.children(),
                picture.children().stream().filter(c -> !week.contains(c.row().schoolKey())).toList(),
                looks.stream().filter(l -> l.day().isAfter(from))
                        .collect(Collectors.groupingBy(Look::child, Collectors.counting())));
    }

    /** Looks at a child in the weeks counted. */
    long looks(OneChild child) {
        return counts.getOrDefault(child.row().schoolKey(), 0L);
    }

    /**
     * Those with the fewest looks, fewest first, then by name; nobody while all were seen equally often.
     *
     * @param most how many at most
     */
    List<OneChild> least(int most) {
        if (children.stream().mapToLong(this::looks).distinct().count() < 2) {
            return List.of();
        }
        return children.stream().sorted(Comparator.comparingLong(this::looks)
                .thenComparing(c -> c.row().label())).limit(most).toList();
    }
}
