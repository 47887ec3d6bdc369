package org.stepwell.pacing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.dom.Element;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.core.check.LessonStanding;
import org.stepwell.core.check.Share;
import org.stepwell.core.pacing.UnitCourse;
import org.stepwell.pacing.Lesson;
import org.stepwell.pacing.LessonChoice;
import org.stepwell.pacing.LessonChoice.Choice;
import org.stepwell.pacing.LessonService;
import org.stepwell.pacing.UnitPlan;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;

/** The lesson in hand: who has it, who not yet, who was not seen, and three ways on of which none is proposed. */
final class LessonPanel extends Div {
    private final Words texts = Words.of("unit");
    private final UUID classId;
    private final UnitPlan plan;
    private final LessonService lessons;
    private final Runnable changed;
    private final Div problem = new Div();
    private final Set<UUID> again = new LinkedHashSet<>();

    LessonPanel(UUID classId, UnitPlan plan, LessonService lessons, Runnable changed) {
        this.classId = classId;
        this.plan = plan;
        this.lessons = lessons;
        this.changed = changed;
        addClassName("sheet");
        add(new H2(texts.say("in-hand")));
        Lesson lesson = plan.inHand();
        if (lesson == null) {
            add(Parts.soft(texts.say(plan.lessons().isEmpty() ? "in-hand.none" : "in-hand.all-done")));
        } else {
            add(about(lesson), standing(), ways(lesson));
        }
        add(end());
    }

    private Component about(Lesson lesson) {
        int used = plan.daysUsed(lesson.lessonId()) + (plan.chosenToday().isPresent() ? 0 : 1);
        Div about = new Div(new H3(lesson.title()), Parts.soft(texts.say("in-hand.day", texts.weekday(plan.day()), used,
                lesson.days())));
        if (!plan.steps().isEmpty()) {
            about.add(new Paragraph(texts.say("in-hand.steps", plan.steps().entrySet().stream()
                    .map(e -> texts.say("skill-step", e.getKey(), e.getValue())).collect(Collectors.joining(", ")))));
        }
        if (!lesson.materials().isBlank()) {
            about.add(new Paragraph(texts.say("in-hand.materials", lesson.materials())));
        }
        if (!lesson.points().isBlank()) {
            Paragraph points = new Paragraph(lesson.points());
            points.addClassName("as-written");
            about.add(points);
        }
        return about;
    }

    private Component standing() {
        LessonStanding standing = plan.standing();
        Share share = standing.share();
        Div part = new Div();
        if (plan.steps().isEmpty()) {
            part.add(Parts.soft(texts.say("standing.no-skills")));
            return part;
        }
        part.add(new Paragraph(share.of() == 0 ? texts.say("standing.nobody-seen", plan.children().size())
                : texts.say("standing.share", share.hits(), share.of(), Objects.requireNonNull(share.low95()),
                        Objects.requireNonNull(share.high95()), plan.children().size() - share.of())),
                Parts.soft(texts.say("standing.since", texts.day(plan.since()))));
        line(part, "standing.has", standing.has());
        line(part, "standing.not-yet", standing.notYet());
        line(part, "standing.hidden", standing.hidden());
        line(part, "standing.not-seen", standing.notSeen());
        return part;
    }

    private void line(Div part, String key, List<String> children) {
        if (!children.isEmpty()) {
            part.add(new Paragraph(texts.say(key, children.size(), plan.rows(children).stream().map(ChildRow::label)
                    .collect(Collectors.joining(", ")))));
        }
    }

    private Component ways(Lesson lesson) {
        Div part = new Div(new H3(texts.say("ways")), Parts.soft(texts.say("ways.about")));
        plan.chosenToday().ifPresent(choice -> part.add(new Paragraph(chosen(choice))));
        Div checks = new Div();
        checks.addClassNames("row", "checks");
        checks.getElement().setAttribute("role", "group").setAttribute("aria-label", texts.say("ways.children"));
        List<String> offered = new ArrayList<>(plan.standing().notYet());
        offered.addAll(plan.standing().hidden());
        offered.addAll(plan.standing().notSeen());
        plan.rows(plan.standing().notYet()).forEach(c -> again.add(c.childId()));
        plan.rows(offered).forEach(child -> checks.add(check(child)));
        Div buttons = new Div(way("ways.another", Choice.ANOTHER_DAY), way("ways.on", Choice.MOVE_ON),
                way("ways.again", Choice.MOVE_ON_SHOW_AGAIN));
        buttons.addClassName("row");
        if (!offered.isEmpty() && !lesson.skills().isEmpty()) {
            part.add(Parts.soft(texts.say("ways.children")), checks);
        }
        part.add(buttons, problem);
        return part;
    }

    private String chosen(LessonChoice choice) {
        return texts.say("chosen." + choice.choice().code().replace('_', '-'), choice.by(), choice.again().size())
                + " " + texts.say("moved", choice.moved());
    }

    private Component check(ChildRow child) {
        Element box = new Element("input");
        box.setAttribute("type", "checkbox").setProperty("checked", again.contains(child.childId()));
        box.addPropertyChangeListener("checked", "change", event -> {
            if (Boolean.TRUE.equals(event.getValue())) {
                again.add(child.childId());
            } else {
                again.remove(child.childId());
            }
        });
        Element label = new Element("label");
        label.appendChild(box, Element.createText(" " + child.label()));
        Div check = new Div();
        check.addClassName("check");
        check.getElement().appendChild(label);
        return check;
    }

    private NativeButton way(String key, Choice choice) {
        return Parts.button(texts.say(key), () -> {
            try {
                lessons.choose(classId, choice, again);
                changed.run();
            } catch (IllegalArgumentException wrong) {
                Parts.say(problem, Words.told(wrong));
            }
        });
    }

    private Component end() {
        Div part = new Div();
        if (!plan.lessons().isEmpty()) {
            UnitCourse.End end = plan.end();
            part.add(new H3(texts.say("end")), new Paragraph(end.early().equals(end.late())
                    ? texts.say("end.day", texts.day(end.early()))
                    : texts.say("end.range", texts.day(end.early()), texts.day(end.asSoFar()), texts.day(end.late()))),
                    Parts.soft(texts.say("end.about")));
        }
        return part;
    }
}
