package org.stepwell.caseload.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.ClickEvent;
import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.NativeButton;
import java.time.LocalDate;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.test.annotation.DirtiesContext;
import org.stepwell.Application;
import org.stepwell.Screens;
import org.stepwell.caseload.CaseloadService;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.roster.RosterService;

/** Shares children of the sample class, so it has an application of its own. */
@SpringBootTest(classes = Application.class,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=caseload-view"})
@DirtiesContext
class CaseloadViewTest extends Screens {
    @Autowired
    private PlanService plans;
    @Autowired
    private RosterService roster;
    @Autowired
    private CaseloadService caseload;

    @Test
    void aSpecialistSeesTheSharedChildrenAndWritesASessionAndAWord() {
        signIn("teacher@sample");
        LocalDate day = today();
        plans.start(roster.byKey("q0602").orElseThrow().childId(), true, new PlanTerms(day, "T05", 2, 4, 80,
                day.plusWeeks(8), "Ms. Dunmore", 3, 20, day.plusWeeks(4), "ten frames"));
        signIn("specialist@sample");
        CaseloadView view = fresh(CaseloadView.class);
        assertThat(text(view)).contains("Amadou", "Room 6", "shared until", "Works on", "Last looks", "3 a week, 20 minutes",
                "Between the adults", "extra help in tens and ones").doesNotContain("Devika", "Tane", "Share children");
        assertThat(below(view).filter(Anchor.class::isInstance).map(a -> ((Anchor) a).getHref()))
                .anyMatch(href -> href.startsWith("/table/?class="));
        press(view, "Session given today (20 min)");
        assertThat(text(view)).contains("Written down for Amadou.");
        fill(view, "Your words", "Began at ten twice.");
        press(view, "Add");
        assertThat(text(view)).contains("Began at ten twice.", "Nkechi Dunmore");
        signIn("teacher@sample");
        assertThat(caseload.comments(roster.children().stream().filter(c -> c.label().equals("Aiyana")).findFirst()
                .orElseThrow().childId())).isEmpty();
    }

    @Test
    void aTeacherSharesAndEnds() {
        signIn("teacher@sample");
        CaseloadView view = fresh(CaseloadView.class);
        assertThat(text(view)).contains("Shared of Room 6", "Amadou with Nkechi Dunmore Looks, plans, notes home, until")
                .doesNotContain("Devika with");
        press(view, "Share");
        assertThat(text(view)).contains("Choose at least one child");
        press(view, "Devika");
        press(view, "Share");
        assertThat(text(view)).contains("Say why the child is shared");
        fill(view, "Why", "counts on from ten; more to do");
        press(view, "Share");
        assertThat(text(view)).contains("1 child is shared now", "Devika with Nkechi Dunmore Looks, plans, until",
                "counts on from ten");
        below(view).filter(NativeButton.class::isInstance).map(NativeButton.class::cast)
                .filter(b -> "End now: Devika, Nkechi Dunmore".equals(b.getElement().getAttribute("aria-label")))
                .findFirst().ifPresentOrElse(b -> ComponentUtil.fireEvent(b, new ClickEvent<>(b)), () -> {
                    throw new AssertionError("no button to end it");
                });
        assertThat(text(view)).contains("Ended. It closes at the next thing Nkechi Dunmore does")
                .doesNotContain("Devika with");
    }

    @Test
    void speaksSpanish() {
        signIn("specialist@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        assertThat(text(fresh(CaseloadView.class))).contains("Niños compartidos", "Últimas observaciones", "Entre los adultos")
                .doesNotContain("Last looks", "shared until");
    }
}
