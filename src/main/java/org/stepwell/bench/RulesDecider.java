package org.stepwell.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ClassReview;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Replay;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;

/** A rule file as it is shipped, run over the classroom the way a replay runs it. */
final class RulesDecider implements Decider {
    private static final Progression NONE = new Progression("bench", List.of(), List.of());

    private final RuleFile rules;
    private final Parameters parameters;
    private @Nullable Classroom last;
    private final Map<String, List<Call>> calls = new HashMap<>();

    RulesDecider(RuleFile rules, Parameters parameters) {
        this.rules = rules;
        this.parameters = parameters;
    }

    @Override
    public String name() {
        return rules.name();
    }

    @Override
    public List<Call> decide(Classroom room, Classroom.Child child, RoomEvidence evidence) {
        if (last != room) {
            run(room);
            last = room;
        }
        return calls.get(child.id());
    }

    private void run(Classroom room) {
        calls.clear();
        room.children().forEach(child -> calls.put(child.id(), new ArrayList<>()));
        ClassSetting setting = new ClassSetting(NONE, room.pacing(), room.calendar());
        List<ClassReview> reviews = new Replay(setting, room.looks(), rules, parameters).run(room.reviews());
        for (int r = 0; r < reviews.size(); r++) {
            Map<String, Suggestion> told = reviews.get(r).byChild();
            for (Map.Entry<String, List<Call>> entry : calls.entrySet()) {
                Suggestion suggestion = told.get(entry.getKey());
                entry.getValue().add(suggestion == null ? unseen() : call(suggestion));
            }
        }
    }

    private static Call unseen() {
        return new Call(Tier.ON_LEVEL, 0);
    }

    private static Call call(Suggestion suggestion) {
        return new Call(suggestion.suggested(), suggestion.chance());
    }
}
