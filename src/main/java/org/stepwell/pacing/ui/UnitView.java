package org.stepwell.pacing.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.stepwell.check.CheckReport;
import org.stepwell.pacing.LessonService;
import org.stepwell.pacing.UnitPlan;
import org.stepwell.pacing.UnitReadiness;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;

/** The unit: the lesson in hand and where to go on, the lessons in order, what the unit builds on. */
@Route("unit")
@Menu(order = 310, title = "unit.unit")
@PermitAll
@StyleSheet("context://look/check.css")
class UnitView extends Div implements HasDynamicTitle {
    private final Words texts = Words.of("unit");
    private final LessonService lessons;
    private final UnitReadiness readiness;
    private final ProgressionService progressions;
    private final CheckReport reports;
    private final Div content = new Div();

    UnitView(RosterService roster, LessonService lessons, UnitReadiness readiness, ProgressionService progressions,
            CheckReport reports) {
        this.lessons = lessons;
        this.readiness = readiness;
        this.progressions = progressions;
        this.reports = reports;
        add(new H1(texts.say("unit")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        add(ClassChoice.line(classes), content);
        try {
            draw(ClassChoice.of(classes).classId());
        } catch (NotVisible closed) {
            add(Parts.soft(texts.say("only-adults")));
        }
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("unit"));
    }

    private void draw(UUID classId) {
        content.removeAll();
        Optional<UnitPlan> plan = lessons.plan(classId);
        if (plan.isEmpty()) {
            content.add(Parts.soft(texts.say("no-unit")));
            return;
        }
        Runnable again = () -> draw(classId);
        content.add(Parts.soft(texts.say("unit.line", plan.get().unit().title(),
                texts.day(plan.get().unit().startsOn()))),
                new LessonPanel(classId, plan.get(), lessons, again),
                new LessonsPanel(classId, plan.get(), lessons, progressions.ofClass(classId), again),
                new BeforePanel(classId, plan.get(), lessons, readiness, reports, again));
    }
}
