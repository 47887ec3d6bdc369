package org.stepwell.core.check;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.DayStep;

/**
 * Who has what a lesson is about, by what was seen since the lesson began. The newest evidence day of each skill
 * counts. Nobody is counted as without it because nobody looked.
 *
 * @param has children whose every skill of the lesson was seen at its step or above
 * @param notYet children with at least one skill seen below its step
 * @param hidden children seen with objects out only, who may well have it: look once without
 * @param notSeen children with a skill nobody looked at
 */
public record LessonStanding(List<String> has, List<String> notYet, List<String> hidden, List<String> notSeen) {

    /** Children who have it, of those seen so that it can be told. */
    public Share share() {
        return new Share(has.size(), has.size() + notYet.size());
    }

    /**
     * Sorts the children of a class.
     *
     * @param children ids in the order wanted
     * @param steps step expected by skill; without skills nobody can be told apart and all are not seen
     * @param from first day of the lesson
     * @param looks child and skill to the looks that count
     */
    public static LessonStanding of(
            List<String> children,
            Map<String, Integer> steps,
            LocalDate from,
            BiFunction<String, String, List<CountedLook>> looks) {
        List<String> has = new ArrayList<>();
        List<String> notYet = new ArrayList<>();
        List<String> hidden = new ArrayList<>();
        List<String> notSeen = new ArrayList<>();
        for (String child : children) {
            int met = 0;
            boolean below = false;
            boolean objects = false;
            for (Map.Entry<String, Integer> skill : steps.entrySet()) {
                List<DayStep> days = DayStep.of(looks.apply(child, skill.getKey()).stream()
                        .filter(l -> !l.day().isBefore(from))
                        .toList());
                if (!days.isEmpty()) {
                    DayStep.Reading reading = days.getLast().against(skill.getValue());
                    met += reading == DayStep.Reading.MEETS ? 1 : 0;
                    below |= reading == DayStep.Reading.BELOW;
                    objects |= reading == DayStep.Reading.HIDDEN;
                }
            }
            List<String> place =
                    below ? notYet : !steps.isEmpty() && met == steps.size() ? has : objects ? hidden : notSeen;
            place.add(child);
        }
        return new LessonStanding(has, notYet, hidden, notSeen);
    }
}
