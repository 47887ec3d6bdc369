package org.stepwell.core.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;

/**
 * A look without help after help ended: does it hold? It is due until one is made.
 *
 * @param due from this day on
 * @param made the day it was made; {@code null} while it is owed
 * @param step step shown then; 0 while it is owed
 * @param holds whether it was the step of the goal or above
 */
public record LookAgain(LocalDate due, @Nullable LocalDate made, int step, boolean holds) {
    /** A look so many days early serves as well. */
    private static final int DAYS_EARLY = 3;

    /**
     * The looks of two and of four weeks after the end.
     *
     * @param counted looks of the child at the skill that was in focus that count, in any order
     * @param goal step of the goal
     */
    public static List<LookAgain> after(LocalDate end, int goal, List<CountedLook> counted) {
        return PlannedSessions.maintenance(end).stream().map(due -> {
            Optional<CountedLook> look = counted.stream().filter(Fading::withoutHelp)
                    .filter(l -> !l.day().isBefore(due.minusDays(DAYS_EARLY)))
                    .min(java.util.Comparator.comparing(CountedLook::day).thenComparing(l -> -l.step()));
            return look.map(l -> new LookAgain(due, l.day(), l.step(), l.step() >= goal))
                    .orElseGet(() -> new LookAgain(due, null, 0, false));
        }).toList();
    }

    /** Whether it is owed on a day. */
    public boolean owed(LocalDate day) {
        return made == null && !due.isAfter(day);
    }
}
