package org.stepwell.review.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.pacing.Course;
import org.stepwell.core.pacing.Course.Stage;
import org.stepwell.pacing.Lesson;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;

/** The lesson in hand as the teacher wrote it; where no lesson is written, the skill begun last by the pacing. */
class LessonCard extends Div {
    private final Words texts;
    private final ClassPicture picture;

    LessonCard(Words texts, ClassPicture picture, UnitInHand unit, @Nullable Lesson lesson) {
        this.texts = texts;
        this.picture = picture;
        addClassNames("sheet", "tall");
        add(new H2(texts.say("lesson")), Parts.soft(unit.title()));
        Course course = Course.on(picture.day(), unit.pacing(), unit.calendar());
        List<Stage> also = course.taught();
        if (lesson != null) {
            add(lead(lesson.title()));
            also = also.stream().filter(stage -> !lesson.skills().contains(stage.skill())).toList();
            lesson.skills().forEach(skill -> add(new Paragraph(named(skill) + of(course, skill))));
            if (!lesson.materials().isBlank()) {
                add(new Paragraph(texts.say("lesson.materials", lesson.materials())));
            }
        } else if (course.taught().isEmpty()) {
            add(new Paragraph(texts.say("lesson.none")));
        } else {
            Stage now = course.taught().getFirst();
            also = also.subList(1, also.size());
            add(lead(named(now.skill())), new Paragraph(expected(now)));
            if (now.step() != null) {
                add(new Paragraph(stand(now.skill(), now.step())));
            }
        }
        if (!also.isEmpty()) {
            UnorderedList list = new UnorderedList();
            also.forEach(stage -> list.add(new ListItem(named(stage.skill()) + ": " + brief(stage))));
            add(Parts.soft(texts.say("lesson.also")), list);
        }
        if (!course.coming().isEmpty()) {
            Stage next = course.coming().getFirst();
            add(new Paragraph(texts.say("lesson.next", named(next.skill()), texts.day(next.from()))));
        }
        add(lesson == null ? Parts.link("class-map", texts.say("lesson.map")) : Parts.link("unit", texts.say("lesson.unit")));
    }

    private static Paragraph lead(String words) {
        Paragraph lead = new Paragraph(words);
        lead.addClassName("lead");
        return lead;
    }

    private String of(Course course, String skill) {
        return course.taught().stream().filter(stage -> stage.skill().equals(skill)).findFirst()
                .map(stage -> ": " + brief(stage)).orElse("");
    }

    private String named(String skill) {
        return (skill + " " + picture.progression().titles().getOrDefault(skill, "")).strip();
    }

    private String expected(Stage stage) {
        String begun = texts.say("lesson.begun", texts.day(stage.from()));
        if (stage.step() != null && stage.since() != null) {
            return begun + " " + texts.say("lesson.since", stage.step(), texts.day(stage.since())) + later(stage);
        }
        return stage.next() == null || stage.nextStep() == null ? begun
                : begun + " " + texts.say("lesson.from", stage.nextStep(), texts.day(stage.next()));
    }

    private String later(Stage stage) {
        return stage.next() == null || stage.nextStep() == null ? ""
                : " " + texts.say("lesson.then", stage.nextStep(), texts.day(stage.next()));
    }

    private String brief(Stage stage) {
        if (stage.step() != null) {
            return texts.say("lesson.step", stage.step());
        }
        return stage.next() == null || stage.nextStep() == null ? texts.say("lesson.not-due")
                : texts.say("lesson.step-from", stage.nextStep(), texts.day(stage.next()));
    }

    private String stand(String skill, int step) {
        int reached = 0;
        int below = 0;
        for (OneChild child : picture.children()) {
            var estimate = child.picture().skills().get(skill);
            if (estimate != null && estimate.seen()) {
                if (estimate.step() >= step) {
                    reached++;
                } else {
                    below++;
                }
            }
        }
        return texts.say("lesson.stand", step, reached, below, picture.children().size() - reached - below);
    }
}
