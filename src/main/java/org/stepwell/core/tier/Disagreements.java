package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.DayStep;

/** Finds where two sources tell different things: two adults, or a unit check and the table. */
final class Disagreements {
    private static final int APART = 2;
    private static final int DAYS_OF_EACH = 2;
    private static final int FEWEST_ITEMS = 4;
    private static final int FEWEST_DAYS = 3;
    private static final double SHARES_APART = 0.5;

    private Disagreements() {}

    static List<Note> of(Sight now) {
        List<Note> notes = new ArrayList<>();
        now.context().due().keySet().forEach(skill -> observers(skill, now).ifPresent(notes::add));
        check(now).ifPresent(notes::add);
        return notes;
    }

    /** Adults whose looks on the last evidence days of a skill lie two steps or more apart. */
    private static Optional<Note> observers(String skill, Sight now) {
        List<DayStep> days = last(now.daySteps().get(skill), now);
        Map<String, List<CountedLook>> byAdult = new TreeMap<>();
        for (DayStep day : days) {
            NoteFinder.watched(day.looks())
                    .forEach(l -> byAdult.computeIfAbsent(l.look().observer(), o -> new ArrayList<>()).add(l));
        }
        String low = null;
        String high = null;
        byAdult.values().removeIf(looks -> Sight.days(looks) < DAYS_OF_EACH);
        for (String adult : byAdult.keySet()) {
            low = low == null || mean(byAdult.get(adult)) < mean(byAdult.get(low)) ? adult : low;
            high = high == null || mean(byAdult.get(adult)) > mean(byAdult.get(high)) ? adult : high;
        }
        if (low == null || high == null || mean(byAdult.get(high)) - mean(byAdult.get(low)) < APART) {
            return Optional.empty();
        }
        SortedSet<String> tasksHigh = tasks(byAdult.get(high));
        SortedSet<String> tasksLow = tasks(byAdult.get(low));
        boolean apart = Collections.disjoint(tasksHigh, tasksLow);
        return Optional.of(new Note.ObserversDiffer(
                skill,
                high,
                (int) StrictMath.rint(mean(byAdult.get(high))),
                apart ? tasksHigh : new TreeSet<>(),
                low,
                (int) StrictMath.rint(mean(byAdult.get(low))),
                apart ? tasksLow : new TreeSet<>()));
    }

    private static List<DayStep> last(List<DayStep> days, Sight now) {
        int n = now.context().settings().signal().days();
        return days.subList(Math.max(0, days.size() - n), days.size());
    }

    private static double mean(List<CountedLook> looks) {
        return looks.stream().mapToInt(CountedLook::step).average().orElse(0);
    }

    private static SortedSet<String> tasks(List<CountedLook> looks) {
        SortedSet<String> tasks = new TreeSet<>();
        looks.stream().map(l -> l.look().task()).filter(Objects::nonNull).forEach(tasks::add);
        return tasks;
    }

    private static Optional<Note> check(Sight now) {
        List<CountedLook> items =
                now.inUnit().stream().filter(CountedLook::checkItem).toList();
        int right = 0;
        int all = 0;
        for (CountedLook item : items) {
            Integer expected = now.context().due().get(item.skill());
            if (expected != null) {
                right += item.step() >= expected ? 1 : 0;
                all++;
            }
        }
        if (all < FEWEST_ITEMS) {
            return Optional.empty();
        }
        int meeting = 0;
        int days = 0;
        for (Map.Entry<String, Integer> due : now.context().due().entrySet()) {
            List<CountedLook> watched = NoteFinder.watched(now.inWindow()).stream()
                    .filter(l -> l.skill().equals(due.getKey()))
                    .toList();
            for (DayStep day : last(DayStep.of(watched), now)) {
                DayStep.Reading reading = day.against(due.getValue());
                meeting += reading == DayStep.Reading.MEETS ? 1 : 0;
                days += reading == DayStep.Reading.HIDDEN ? 0 : 1;
            }
        }
        boolean apart = days >= FEWEST_DAYS
                && Math.abs((double) right / all - (double) meeting / days) >= SHARES_APART;
        return apart ? Optional.of(new Note.CheckDisagrees(right, all, meeting, days)) : Optional.empty();
    }
}
