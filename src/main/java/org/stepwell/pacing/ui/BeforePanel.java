package org.stepwell.pacing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.stepwell.check.CheckReport;
import org.stepwell.check.CheckResults;
import org.stepwell.core.check.LookAgain;
import org.stepwell.pacing.LessonService;
import org.stepwell.pacing.TableTask;
import org.stepwell.pacing.UnitPlan;
import org.stepwell.pacing.UnitReadiness;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;

/** What the unit builds on, what the last check left over, and the table tasks both become. */
final class BeforePanel extends Div {
    private final Words texts = Words.of("unit");
    private final UUID classId;
    private final UnitPlan plan;
    private final LessonService lessons;
    private final Runnable changed;

    BeforePanel(UUID classId, UnitPlan plan, LessonService lessons, UnitReadiness readiness, CheckReport reports,
            Runnable changed) {
        this.classId = classId;
        this.plan = plan;
        this.lessons = lessons;
        this.changed = changed;
        add(tasks(), before(readiness.prerequisites(classId)));
        reports.newestCounted(classId).filter(r -> !r.carryOver().isEmpty()).ifPresent(r -> add(carried(r)));
    }

    private Component tasks() {
        Div part = Parts.sheet(new H2(texts.say("tasks")), Parts.soft(texts.say("tasks.about")));
        Map<String, List<String>> byName = new LinkedHashMap<>();
        for (TableTask task : plan.tasks()) {
            plan.children().stream().filter(c -> c.childId().equals(task.childId())).findFirst().ifPresent(child ->
                    byName.computeIfAbsent(child.label(), l -> new ArrayList<>()).add(texts.say("task."
                            + task.why().code().replace('_', '-'), task.skill(), texts.day(task.madeOn()))));
        }
        if (byName.isEmpty()) {
            part.add(new Paragraph(texts.say("tasks.none")));
        }
        UnorderedList list = new UnorderedList();
        byName.forEach((name, own) -> list.add(new ListItem(name + ": " + String.join("; ", own))));
        if (!byName.isEmpty()) {
            part.add(list);
        }
        return part;
    }

    private Component before(Map<ChildRow, List<LookAgain>> all) {
        Div part = Parts.sheet(new H2(texts.say("before")), Parts.soft(texts.say("before.about")));
        if (all.isEmpty()) {
            part.add(new Paragraph(texts.say("before.nothing")));
            return part;
        }
        List<TableTask> open = new ArrayList<>();
        UnorderedList again = new UnorderedList();
        UnorderedList every = new UnorderedList();
        all.forEach((child, needs) -> {
            List<String> lines = new ArrayList<>();
            for (LookAgain need : needs) {
                lines.add(said(need));
                if (need.worthALook()) {
                    open.add(new TableTask(child.childId(), need.skill(), TableTask.Why.LOOK_AGAIN, plan.day()));
                }
            }
            every.add(new ListItem(child.label() + ": " + String.join("; ", lines)));
            List<String> worth = needs.stream().filter(LookAgain::worthALook).map(this::said).toList();
            if (!worth.isEmpty()) {
                again.add(new ListItem(child.label() + ": " + String.join("; ", worth)));
            }
        });
        long children = open.stream().map(TableTask::childId).distinct().count();
        part.add(new Paragraph(texts.say("before.count", children, all.size())));
        if (!open.isEmpty()) {
            part.add(again, Parts.button(texts.say("before.tasks"), () -> made(open)));
        }
        part.add(new NativeDetails(texts.say("before.every"), every));
        return part;
    }

    private String said(LookAgain need) {
        long age = need.lastSeen() == null ? 0 : ChronoUnit.DAYS.between(need.lastSeen(), plan.day());
        return texts.say("need." + need.says().name().toLowerCase(Locale.ROOT), need.skill(), need.step(),
                need.estimated(), age);
    }

    private Component carried(CheckResults results) {
        Div part = Parts.sheet(new H2(texts.say("carried")), Parts.soft(texts.say("carried.about",
                results.sheet().line().title(), texts.day(results.sheet().line().heldOn()))));
        Map<String, List<String>> bySkill = new LinkedHashMap<>();
        List<TableTask> tasks = new ArrayList<>();
        results.carryOver().forEach(c -> {
            bySkill.computeIfAbsent(c.skill(), s -> new ArrayList<>()).add(c.child().label());
            tasks.add(new TableTask(c.child().childId(), c.skill(), TableTask.Why.CARRY_OVER, plan.day()));
        });
        UnorderedList list = new UnorderedList();
        bySkill.forEach((skill, names) -> list.add(new ListItem(skill + ": " + String.join(", ", names))));
        part.add(list, Parts.button(texts.say("before.tasks"), () -> made(tasks)));
        return part;
    }

    private void made(List<TableTask> tasks) {
        lessons.addTasks(classId, tasks);
        changed.run();
    }
}
