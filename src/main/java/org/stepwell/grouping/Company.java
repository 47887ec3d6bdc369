package org.stepwell.grouping;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How long a child has kept its company: groupings in a row in which more than half of those at its table were there
 * the time before as well.
 *
 * @param lastGroup name of the last group; {@code null} when the child was in none
 * @param stays groupings in a row, 0 when in none
 * @param since first day of the first of them
 */
record Company(@Nullable String lastGroup, int stays, @Nullable LocalDate since) {
    /** @param past groupings that went on, newest first */
    static Company of(String child, List<Seating> past) {
        if (past.isEmpty() || !past.getFirst().places().containsKey(child)) {
            return new Company(null, 0, null);
        }
        Seating newest = past.getFirst();
        int stays = 1;
        LocalDate since = newest.forOn();
        for (int i = 0; i + 1 < past.size() && keeps(child, past.get(i + 1), past.get(i)); i++) {
            stays++;
            since = past.get(i + 1).forOn();
        }
        return new Company(newest.seatingId() + " " + newest.places().get(child).group(), stays, since);
    }

    private static boolean keeps(String child, Seating before, Seating after) {
        Set<String> then = mates(child, before);
        Set<String> now = mates(child, after);
        Set<String> both = new HashSet<>(now);
        both.retainAll(then);
        return 2 * both.size() > now.size();
    }

    private static Set<String> mates(String child, Seating seating) {
        Seating.Place own = seating.places().get(child);
        Set<String> mates = new HashSet<>();
        if (own != null) {
            seating.places().forEach((other, place) -> {
                if (place.group() == own.group() && !other.equals(child)) {
                    mates.add(other);
                }
            });
        }
        return mates;
    }
}
