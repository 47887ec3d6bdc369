package org.stepwell.pacing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.OrderedList;
import com.vaadin.flow.dom.Element;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.progression.Progression;
import org.stepwell.pacing.Lesson;
import org.stepwell.pacing.LessonService;
import org.stepwell.pacing.UnitPlan;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** The lessons in order, as the teacher writes them. */
final class LessonsPanel extends Div {
    private final Words texts = Words.of("unit");
    private final UUID classId;
    private final UnitPlan plan;
    private final LessonService lessons;
    private final Progression progression;
    private final Runnable changed;
    private final Div problem = new Div();

    LessonsPanel(UUID classId, UnitPlan plan, LessonService lessons, Progression progression, Runnable changed) {
        this.classId = classId;
        this.plan = plan;
        this.lessons = lessons;
        this.progression = progression;
        this.changed = changed;
        addClassName("sheet");
        add(new H2(texts.say("lessons")), Parts.soft(texts.say("lessons.about")));
        OrderedList list = new OrderedList();
        list.addClassName("lessons");
        for (int i = 0; i < plan.lessons().size(); i++) {
            list.add(new ListItem(form(plan.lessons().get(i), i)));
        }
        if (!plan.lessons().isEmpty()) {
            add(list);
        }
        add(problem, form(null, plan.lessons().size()));
        if (plan.lessons().isEmpty() && !plan.unit().pacing().rows().isEmpty()) {
            add(Parts.button(texts.say("lessons.from-dates"), () -> tried(() -> lessons.fromDates(classId))));
        }
    }

    private Component form(@Nullable Lesson lesson, int at) {
        String[] title = {lesson == null ? "" : lesson.title()};
        String[] skills = {lesson == null ? "" : String.join(" ", lesson.skills())};
        String[] step = {lesson == null || lesson.step() == null ? "" : String.valueOf(lesson.step())};
        String[] days = {lesson == null ? "1" : String.valueOf(lesson.days())};
        String[] materials = {lesson == null ? "" : lesson.materials()};
        String[] points = {lesson == null ? "" : lesson.points()};
        Map<String, String> steps = new LinkedHashMap<>();
        steps.put("", texts.say("lesson.step.pacing"));
        for (int s = 1; s <= 5; s++) {
            steps.put(String.valueOf(s), String.valueOf(s));
        }
        Div fields = new Div(Parts.input(texts.say("lesson.title"), "text", title[0], v -> title[0] = v),
                Parts.input(texts.say("lesson.skills"), "text", skills[0], v -> skills[0] = v),
                Parts.choice(texts.say("lesson.step"), steps, step[0], v -> step[0] = v),
                Parts.input(texts.say("lesson.days"), "number", days[0], v -> days[0] = v),
                Parts.input(texts.say("lesson.materials"), "text", materials[0], v -> materials[0] = v),
                area(texts.say("lesson.points"), points[0], v -> points[0] = v));
        fields.addClassName("row");
        Div buttons = new Div(Parts.button(texts.say(lesson == null ? "lesson.add" : "lesson.save"), () -> tried(() ->
                lessons.save(classId, List.of(new Lesson(lesson == null ? UUID.randomUUID() : lesson.lessonId(),
                        lesson == null ? 0 : lesson.number(), lesson == null ? next() : lesson.position(),
                        title[0].strip(), codes(skills[0]), step[0].isEmpty() ? null : Integer.valueOf(step[0]),
                        materials[0].strip(), points[0].strip(), number(days[0])))))));
        buttons.addClassName("row");
        if (lesson != null) {
            if (at > 0) {
                buttons.add(Parts.button(texts.say("lesson.earlier"), () -> tried(() -> earlier(at))));
            }
            buttons.add(Parts.button(texts.say("lesson.remove"), () -> tried(() -> lessons.remove(classId, lesson))));
        }
        return new NativeDetails(lesson == null ? texts.say("lesson.new") : summary(lesson),
                new Div(fields, buttons));
    }

    private String summary(Lesson lesson) {
        int used = plan.daysUsed(lesson.lessonId());
        String state = plan.done(lesson.lessonId()) ? "done" : lesson.equals(plan.inHand()) ? "now" : "ahead";
        return texts.say("lesson.line." + state, lesson.title(), lesson.days(), used);
    }

    private int next() {
        return plan.lessons().stream().mapToInt(Lesson::position).max().orElse(0) + 1;
    }

    /** Puts the lesson one place up, and the places of all in order with it. */
    private void earlier(int at) {
        List<Lesson> order = new ArrayList<>(plan.lessons());
        order.add(at - 1, order.remove(at));
        List<Lesson> moved = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) {
            if (order.get(i).position() != i + 1) {
                moved.add(order.get(i).at(i + 1));
            }
        }
        lessons.save(classId, moved);
    }

    private List<String> codes(String text) {
        List<String> codes = Arrays.stream(text.split("[\\s,;]+")).filter(c -> !c.isEmpty()).distinct().toList();
        for (String code : codes) {
            if (progression.skill(code).isEmpty() && !plan.unit().pacing().skills().contains(code)) {
                throw new IllegalArgumentException(texts.say("lesson.skill-unknown", code));
            }
        }
        return codes;
    }

    private int number(String text) {
        try {
            return Integer.parseInt(text.strip());
        } catch (NumberFormatException wrong) {
            throw new IllegalArgumentException(texts.say("lesson.days-wrong"), wrong);
        }
    }

    private void tried(Runnable change) {
        try {
            change.run();
            changed.run();
        } catch (IllegalArgumentException wrong) {
            Parts.say(problem, Words.told(wrong));
        }
    }

    private static Component area(String label, String value, Consumer<String> heard) {
        Element area = new Element("textarea");
        area.setAttribute("rows", "3").setProperty("value", value);
        area.addPropertyChangeListener("value", "change", event -> heard.accept(
                event.getValue() == null ? "" : String.valueOf(event.getValue())));
        Element words = new Element("label");
        words.appendChild(Element.createText(label), area);
        Div field = new Div();
        field.addClassName("field");
        field.getElement().appendChild(words);
        return field;
    }
}
