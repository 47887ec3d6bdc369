package org.stepwell.core.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * One evidence day of one child and skill: a day with at least one valid look. Days, not looks, are the unit of
 * counting rules, because looks in one sitting are not independent.
 *
 * @param day the date
 * @param skill code of the skill
 * @param step the highest valid step of the day, 1-5
 * @param atLeast {@code true}: all looks of the day that reached the step had objects out and none was without, so the
 *     child may well be above it
 * @param looks the valid looks of the day, oldest first
 */
public record DayStep(LocalDate day, String skill, int step, boolean atLeast, List<CountedLook> looks) {

    /** How a day reads against an expected step. */
    public enum Reading {
        /** At the expected step or above. */
        MEETS,
        /** Below it. */
        BELOW,
        /** Objects were out: nobody can tell. */
        HIDDEN
    }

    /** Copies the list. */
    public DayStep {
        looks = List.copyOf(looks);
    }

    /** Reads the day against the expected step (1-5); objects out never count as below. */
    public Reading against(int expected) {
        if (step >= expected) {
            return Reading.MEETS;
        }
        return atLeast ? Reading.HIDDEN : Reading.BELOW;
    }

    /** The adults who looked on the day, in order of name. */
    public SortedSet<String> observers() {
        return looks.stream().map(l -> l.look().observer()).collect(Collectors.toCollection(TreeSet::new));
    }

    /**
     * The evidence days among looks of one child and one skill, oldest first.
     *
     * @param looks in any order; assisted ones are left out
     * @throws IllegalArgumentException when two skills or two children are mixed
     */
    public static List<DayStep> of(Collection<CountedLook> looks) {
        Map<LocalDate, List<CountedLook>> byDay = new TreeMap<>();
        for (CountedLook look : looks) {
            if (look.valid()) {
                byDay.computeIfAbsent(look.day(), d -> new ArrayList<>()).add(look);
            }
        }
        List<DayStep> days = new ArrayList<>();
        byDay.forEach((day, own) -> days.add(of(day, own)));
        return days;
    }

    private static DayStep of(LocalDate day, List<CountedLook> looks) {
        CountedLook first = looks.getFirst();
        for (CountedLook look : looks) {
            if (!look.skill().equals(first.skill()) || !look.look().child().equals(first.look().child())) {
                throw new IllegalArgumentException("day steps are of one child and one skill, not of "
                        + first.look().child() + "/" + first.skill() + " and "
                        + look.look().child() + "/" + look.skill());
            }
        }
        List<CountedLook> sorted = looks.stream().sorted(EffectiveLooks.BY_TIME).toList();
        int highest = sorted.stream().mapToInt(CountedLook::step).max().orElseThrow();
        boolean hidden = highest < 5
                && sorted.stream().noneMatch(l -> l.look().help() == Help.NONE || l.step() == highest && !l.atLeast());
        return new DayStep(day, first.skill(), highest, hidden, sorted);
    }
}
