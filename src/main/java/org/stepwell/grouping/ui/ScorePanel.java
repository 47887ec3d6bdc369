package org.stepwell.grouping.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.stepwell.core.grouping.GroupChild;
import org.stepwell.core.grouping.GroupScore;
import org.stepwell.core.grouping.GroupingTask;
import org.stepwell.core.grouping.SeatReason;
import org.stepwell.core.wording.GroupingWording;
import org.stepwell.grouping.GroupsPicture;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** What speaks for and against groups, in words; made afresh after each change. */
final class ScorePanel {
    private static final int LONG = 3;

    private final Words words = Words.of("grouping");
    private final GroupingWording wording = new GroupingWording(Words.language());
    private final GroupsPicture picture;
    private final Map<String, String> labels;

    ScorePanel(GroupsPicture picture) {
        this.picture = picture;
        this.labels = picture.labels();
    }

    /** Reasons by child, as they are shown and saved. */
    Map<String, String> reasons(GroupingTask task, Map<String, Integer> groupOf) {
        Map<String, String> reasons = new java.util.TreeMap<>();
        for (SeatReason reason : SeatReason.of(task, groupOf)) {
            List<String> others = new ArrayList<>();
            labels.forEach((id, label) -> {
                if (!id.equals(reason.child())) {
                    others.add(id);
                    others.add(label);
                }
            });
            reasons.put(reason.child(), wording.reason(reason, this::skill, others));
        }
        return reasons;
    }

    private String skill(String code) {
        String title = picture.progression().titles().get(code);
        return title == null ? code : code + " (" + title + ")";
    }

    /** One line on a group: skills, span of steps, company. */
    String line(GroupScore.Table table) {
        String skills = table.skills().isEmpty() ? words.say("score.no-skill") : String.join(", ", table.skills());
        String steps = table.lowest() == null || table.highest() == null ? ""
                : " · " + (table.lowest().equals(table.highest()) ? words.say("score.step", table.lowest())
                : words.say("score.steps", table.lowest(), table.highest()));
        return skills + steps;
    }

    /** Line and reasons of a group, for below its children. */
    List<Component> below(GroupingTask task, Map<String, Integer> groupOf, int group) {
        GroupScore.Table table = GroupScore.of(task, groupOf).tables().get(group - 1);
        Map<String, String> reasons = reasons(task, groupOf);
        Div why = new Div();
        table.children().forEach(child -> why.add(new Paragraph(labels.getOrDefault(child, child) + ": "
                + reasons.get(child))));
        why.addClassName("small");
        NativeDetails details = new NativeDetails(words.say("why"), why);
        Paragraph skills = Parts.soft(String.join(", ", table.skills()));
        skills.addClassName("small");
        Paragraph line = Parts.soft(line(table));
        why.addComponentAsFirst(line);
        return table.children().isEmpty() ? List.of(Parts.soft(words.say("group.empty"))) : List.of(skills, details);
    }

    /** What holds for all groups together. */
    Div all(GroupingTask task, Map<String, Integer> groupOf) {
        GroupScore score = GroupScore.of(task, groupOf);
        Div all = new Div();
        all.getElement().setAttribute("role", "status");
        all.add(new Paragraph(summary(score)));
        if (!score.even()) {
            all.add(new Paragraph(words.say("score.uneven")));
        }
        UnaryOperator<String> name = id -> labels.getOrDefault(id, id);
        score.broken().forEach(wish -> {
            Paragraph broken = new Paragraph(words.say("score.broken", wording.wish(wish, name)));
            broken.addClassName("caution");
            all.add(broken);
        });
        List<String> stays = new ArrayList<>();
        for (GroupChild child : picture.children()) {
            if (child.stays() >= LONG && picture.since().containsKey(child.id())) {
                stays.add(words.say("score.stay", name.apply(child.id()), child.stays(),
                        words.day(picture.since().get(child.id()))));
            }
        }
        if (!stays.isEmpty()) {
            all.add(new Paragraph(words.say("score.stays", String.join("; ", stays))));
        }
        return all;
    }

    /** Tables with one skill, widest span of steps, pairs who sat together last time. */
    String summary(GroupScore score) {
        long filled = score.tables().stream().filter(t -> !t.children().isEmpty()).count();
        long one = score.tables().stream().filter(t -> !t.children().isEmpty() && t.skills().size() <= 1).count();
        double widest = 0;
        int known = 0;
        int pairs = 0;
        for (GroupScore.Table table : score.tables()) {
            if (table.lowest() != null && table.highest() != null) {
                widest = Math.max(widest, table.highest() - table.lowest());
            }
            known += table.known();
            pairs += table.pairs();
        }
        String tasks = words.say("score.summary", one, filled, Math.rint(widest * 10) / 10);
        boolean satBefore = picture.children().stream().anyMatch(c -> c.lastGroup() != null);
        return satBefore ? tasks + " " + words.say("score.company", known, pairs) : tasks;
    }
}
