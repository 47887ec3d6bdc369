package org.stepwell.tier;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Skill;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.ClassReview;
import org.stepwell.roster.ChildRow;

/**
 * A class on a day, as one adult may see it.
 *
 * @param day today at the school
 * @param unitTitle unit in hand; empty when there is none
 * @param progression its skills and words
 * @param due due skills with the step now expected
 * @param children by name
 * @param review what the rules say about each of them
 * @param looks all looks the picture rests on
 */
public record ClassPicture(LocalDate day, String unitTitle, Progression progression,
        SortedMap<String, Integer> due, List<OneChild> children, ClassReview review, List<Look> looks) {

    /** What a child works on next: the first due skill below the expected step, else the last due one. */
    public Optional<Skill> focus(OneChild one) {
        List<Skill> all = progression.skills().stream().filter(skill -> due.containsKey(skill.code())).toList();
        return all.stream().filter(skill -> {
            SkillEstimate estimate = one.picture().skills().get(skill.code());
            return estimate == null || estimate.step() < due.get(skill.code());
        }).findFirst().or(() -> all.isEmpty() ? Optional.empty() : Optional.of(all.getLast()));
    }

    /** One child: what the evidence says and which support runs. */
    public record OneChild(ChildRow row, ChildPicture picture, ChildState state) {
        /** Whether the teacher has decided about the child on this day. */
        public boolean decided(LocalDate day) {
            return state.reviews().contains(day);
        }
    }
}
