package org.stepwell.core.check;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.progression.Progression;

/**
 * What a unit builds on, and whether a child was seen there. It warns and never blocks.
 *
 * @param skill code of the skill needed
 * @param step step needed there
 * @param says what the evidence says
 * @param estimated step of the estimate; 0 when never seen
 * @param lastSeen day of the newest look; {@code null} when never seen
 */
public record LookAgain(String skill, int step, Says says, int estimated, @Nullable LocalDate lastSeen) {
    /** What the evidence says about a prerequisite. */
    public enum Says {
        /** Seen at the step or above, not long ago. */
        THERE,
        /** Seen at the step or above, but long ago. */
        OLD,
        /** Seen below the step. */
        BELOW,
        /** Never seen. */
        NEVER
    }

    /** Whether a fresh look is worth a minute at the table. */
    public boolean worthALook() {
        return says != Says.THERE;
    }

    /**
     * The prerequisites of a unit outside itself, with the highest step needed of each, in the order of the
     * progression.
     *
     * @param expected highest step expected in the unit, by skill
     */
    public static Map<String, Integer> needs(Progression progression, Map<String, Integer> expected) {
        Map<String, Integer> needed = new LinkedHashMap<>();
        for (Progression.Skill skill : progression.skills()) {
            int step = 0;
            for (Map.Entry<String, Integer> asked : expected.entrySet()) {
                step = Math.max(
                        step,
                        progression.skill(asked.getKey()).map(Progression.Skill::needs).orElse(List.of()).stream()
                                .filter(n -> n.skill().equals(skill.code()) && n.beforeStep() <= asked.getValue())
                                .mapToInt(Progression.Need::step)
                                .max()
                                .orElse(0));
            }
            if (step > 0) {
                needed.put(skill.code(), step);
            }
        }
        return needed;
    }

    /** One child against what is needed; skills the unit itself teaches count as well when they are needed. */
    public static List<LookAgain> of(ChildPicture picture, Map<String, Integer> needs, Set<String> leftAside) {
        List<LookAgain> all = new ArrayList<>();
        needs.forEach((skill, step) -> {
            SkillEstimate estimate = picture.skills().get(skill);
            if (leftAside.contains(skill)) {
                return;
            }
            if (estimate == null || !estimate.seen()) {
                all.add(new LookAgain(skill, step, Says.NEVER, 0, null));
            } else {
                Says says = estimate.step() < step ? Says.BELOW : estimate.stale() ? Says.OLD : Says.THERE;
                all.add(new LookAgain(skill, step, says, estimate.step(), estimate.lastSeen()));
            }
        });
        return all;
    }
}
