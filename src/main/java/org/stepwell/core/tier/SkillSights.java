package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.List;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.evidence.SkillEstimate;

/** The due skills of a sight, one by one. */
final class SkillSights {
    private SkillSights() {}

    static List<Suggestion.SkillSight> of(Sight sight) {
        List<Suggestion.SkillSight> all = new ArrayList<>();
        sight.context().due().forEach((skill, expected) -> {
            List<DayStep> days = sight.daySteps().get(skill);
            SkillEstimate estimate = sight.picture().skills().get(skill);
            all.add(new Suggestion.SkillSight(
                    skill,
                    expected,
                    estimate.step(),
                    estimate.seen() ? estimate.atLeast(expected) : null,
                    estimate.looks(),
                    estimate.days(),
                    estimate.lastSeen(),
                    sight.signal(skill, expected),
                    days.isEmpty() ? null : days.getLast().against(expected)));
        });
        return all;
    }
}
