package org.stepwell.pacing.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.html.NativeTableRow;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.test.annotation.DirtiesContext;
import org.stepwell.Application;
import org.stepwell.Screens;
import org.stepwell.pacing.LessonService;
import org.stepwell.roster.RosterService;

/** Writes lessons into the sample class, so it has an application of its own. */
@SpringBootTest(classes = Application.class,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=unit-view"})
@DirtiesContext
class UnitViewTest extends Screens {
    @Autowired
    private LessonService lessons;
    @Autowired
    private RosterService roster;

    @Test
    void goesFromTheDatesToALessonToAChoiceAndToTableTasks() {
        signIn("teacher@sample");
        UnitView view = fresh(UnitView.class);
        assertThat(text(view)).contains("No lesson is written yet");
        press(view, "Start from the due dates");
        assertThat(text(view)).contains("T05 Teens as ten and ones", "day 1 of", "seen children have it",
                "Three ways, none of them proposed", "Projected end of the unit", "Between");
        press(view, "Another day");
        assertThat(text(view)).contains("chose another day. Due dates stay.");
        press(view, "Move on, and show it again");
        assertThat(text(view)).contains("to show it again to", "moved nearer", "show T05 again");
        int open = lessons.openTasks(roster.classes().getFirst().classId()).size();
        press(view, "Make these table tasks");
        assertThat(text(view)).contains("look at T0");
        assertThat(lessons.openTasks(roster.classes().getFirst().classId())).hasSizeGreaterThan(open);
        writes(view);
    }

    private void writes(UnitView view) {
        LessonsPanel panel = (LessonsPanel) below(view).filter(LessonsPanel.class::isInstance).findFirst()
                .orElseThrow();
        press(panel, "Add lesson");
        assertThat(text(view)).contains("A lesson needs a name");
        int before = lessons.plan(roster.classes().getFirst().classId()).orElseThrow().lessons().size();
        press(panel, "One place earlier");
        press(view, "Remove");
        assertThat(lessons.plan(roster.classes().getFirst().classId()).orElseThrow().lessons()).hasSize(before - 1);
    }

    @Test
    void tellsWhereThereIsNoUnitAndWhoMayPlan() {
        signInToAnEmptyClass();
        assertThat(text(fresh(UnitView.class))).contains("No unit yet.");
        signIn("specialist@sample");
        assertThat(text(fresh(UnitView.class))).contains("Only adults of the class plan its lessons.");
    }

    @Test
    void showsTheLeastSeenFirstAndNoCountsByAdultToALead() {
        signIn("teacher@sample");
        CoverageView view = fresh(CoverageView.class);
        fill(view, "Days", "four");
        List<String> rows = below(view).filter(NativeTableRow.class::isInstance).map(Screens::text).toList();
        assertThat(rows).hasSize(24);
        assertThat(rows.subList(1, 6)).anyMatch(r -> r.startsWith("Oleksandr") || r.startsWith("Tane"));
        assertThat(rows.getLast()).contains("looks on");
        assertThat(text(view)).contains("By whom", "Imogen Castellane ×");
        signIn("lead@sample");
        CoverageView lead = fresh(CoverageView.class);
        fill(lead, "Days", "four");
        assertThat(text(lead)).doesNotContain("By whom").doesNotContain("@sample");
    }
}
