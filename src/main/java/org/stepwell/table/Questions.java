package org.stepwell.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Skill;
import org.stepwell.core.tier.AskNow;
import org.stepwell.pacing.LessonService;
import org.stepwell.pacing.TableTask;
import org.stepwell.roster.ChildRow;
import org.stepwell.tier.TierService;

/**
 * One question to ask each child now, and what is to be looked at again. The page gets the question and the numbers,
 * never why they were chosen: children read.
 */
@Component
class Questions {
    /** More than one visit asks of one child on one skill. */
    private static final int NUMBERS = 4;

    private final TierService tiers;
    private final LessonService lessons;

    Questions(TierService tiers, LessonService lessons) {
        this.tiers = tiers;
        this.lessons = lessons;
    }

    /** The questions of a skill by language, in an order that {@link #ofChildren} counts by. */
    static List<Map<String, String>> ofSkill(Progression progression, Skill skill) {
        return List.copyOf(progression.questions(skill.code()).values());
    }

    /**
     * By the school's own id: {@code ask} with, by skill, the number of the question (absent without questions) and the
     * numbers to try; {@code again} with the skills of open table tasks.
     */
    Map<String, Map<String, Object>> ofChildren(UUID classId, List<ChildRow> children, Progression progression) {
        Map<String, Map<String, AskNow>> asks = tiers.askNow(classId);
        Map<UUID, List<String>> again = lessons.openTasks(classId).stream().collect(Collectors.groupingBy(
                TableTask::childId, Collectors.mapping(TableTask::skill, Collectors.toList())));
        Map<String, Map<String, Object>> all = new LinkedHashMap<>();
        for (ChildRow child : children) {
            Map<String, Object> bySkill = new LinkedHashMap<>();
            asks.getOrDefault(child.schoolKey(), Map.of()).forEach((skill, ask) -> {
                Map<String, Object> one = one(ask, progression.questions(skill));
                if (!one.isEmpty()) {
                    bySkill.put(skill, one);
                }
            });
            all.put(child.schoolKey(), Map.of("ask", bySkill,
                    "again", again.getOrDefault(child.childId(), List.of()).stream().distinct().toList()));
        }
        return all;
    }

    /** The question for the step, else the one for the nearest step above, else the highest there is. */
    private static Map<String, Object> one(AskNow ask, SortedMap<Integer, Map<String, String>> questions) {
        Map<String, Object> one = new LinkedHashMap<>();
        if (!questions.isEmpty()) {
            List<Integer> steps = new ArrayList<>(questions.keySet());
            int reach = (int) steps.stream().filter(s -> s < ask.step()).count();
            one.put("question", Math.min(reach, steps.size() - 1));
        }
        if (!ask.numbers().isEmpty()) {
            one.put("numbers", ask.numbers().stream().limit(NUMBERS).toList());
        }
        return one;
    }
}
