package org.stepwell.tier.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.router.RouterLink;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.roster.RosterService;

class ClassMapViewTest extends Screens {
    @Autowired
    private RosterService roster;

    private static List<String> names(Component view) {
        return below(view).filter(RouterLink.class::isInstance).map(Screens::text).toList();
    }

    private static List<String> labels(Component view) {
        return below(view).filter(NativeButton.class::isInstance).map(b -> b.getElement().getAttribute("aria-label"))
                .filter(label -> label != null).toList();
    }

    @Test
    void standsInTheOrderOfNamesAndSaysEachCellInWords() {
        signIn("teacher@sample");
        ClassMapView view = fresh(ClassMapView.class);
        assertThat(names(view)).hasSize(23).isSorted();
        assertThat(labels(view)).isNotEmpty().allMatch(label -> label.matches(
                ".+, T\\d\\d: step [1-5], (clear|likely|open), (old: )?seen (today|yesterday|\\d+ days ago), \\d+ looks?"));
        assertThat(text(view)).contains("expected 4", "not seen");
    }

    @Test
    void allSkillsHoldAlsoWhatWasSeenOnlyWithHelp() {
        signIn("teacher@sample");
        ClassMapView view = fresh(ClassMapView.class);
        fill(view, "Skills", "all");
        assertThat(labels(view)).anyMatch(label -> label.startsWith("Aiyana, T03")
                && label.endsWith("seen only with a hint or after being shown"));
    }

    @Test
    void narrowsByNameByAgeByCertaintyAndByWhatIsExpected() {
        signIn("teacher@sample");
        ClassMapView view = fresh(ClassMapView.class);
        fill(view, "Name begins with", "ta");
        assertThat(names(view)).isNotEmpty().allMatch(name -> name.startsWith("Ta"));
        fill(view, "Name begins with", "zzz");
        assertThat(names(view)).isEmpty();
        assertThat(text(view)).contains("Nobody's name begins like that.");
        fill(view, "Name begins with", "");
        fill(view, "Show", "old");
        assertThat(names(view)).contains("Oleksandr", "Tane").hasSizeLessThan(23);
        assertThat(text(view)).contains("children shown of 23");
        fill(view, "Show", "below");
        assertThat(names(view)).contains("Amadou").doesNotContain("Itzel").hasSizeLessThan(23);
        fill(view, "Show", "open");
        assertThat(labels(view)).anyMatch(label -> label.contains(", open, ") || label.contains(", likely, "));
    }

    @Test
    void canBeginWithWhoWasSeenLongestAgo() {
        signIn("teacher@sample");
        ClassMapView view = fresh(ClassMapView.class);
        fill(view, "Order", "seen");
        assertThat(names(view)).hasSize(23);
        assertThat(names(view).getFirst()).isEqualTo("Oleksandr");
    }

    @Test
    void aCellOpensTheLooksBehindIt() {
        signIn("teacher@sample");
        ClassMapView view = fresh(ClassMapView.class);
        NativeTableRow row = below(view).filter(NativeTableRow.class::isInstance).map(NativeTableRow.class::cast)
                .filter(r -> text(r).startsWith("Devika")).findFirst().orElseThrow();
        press(row, "");
        assertThat(getCurrentView()).isInstanceOf(ChildView.class);
        assertThat(text((Component) getCurrentView())).startsWith("Devika");
    }

    @Test
    void showsASpecialistTheSharedChildrenOnlyAndANewClassTheWayIn() {
        signIn("specialist@sample");
        assertThat(names(fresh(ClassMapView.class))).contains("Amadou").doesNotContain("Devika")
                .hasSameSizeAs(roster.children());
        signInToAnEmptyClass();
        assertThat(text(fresh(ClassMapView.class))).contains("No child is in this class yet.");
    }

    @Test
    void speaksSpanish() {
        signIn("teacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        ClassMapView view = fresh(ClassMapView.class);
        assertThat(text(view)).contains("Mapa de la clase", "se espera 4").doesNotContain("expected", "days");
        assertThat(labels(view)).allMatch(label -> label.contains(": paso "));
    }
}
