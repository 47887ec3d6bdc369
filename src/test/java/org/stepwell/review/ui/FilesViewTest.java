package org.stepwell.review.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.roster.RosterService;

class FilesViewTest extends Screens {
    @Autowired
    private RosterService roster;

    @Test
    void givesOutEveryFormatOfAClassWithAUnit() {
        signIn("teacher@sample");
        FilesView view = fresh(FilesView.class);
        assertThat(below(view).filter(Anchor.class::isInstance).map(Screens::text)).contains("roster.csv", "skills.csv",
                "phrases.csv", "pacing.csv", "calendar.csv", "observations.csv");
        assertThat(text(view)).contains("23 children in the class", "Teens and tens, since ");
    }

    @Test
    void addsAChildAndSaysWhatIsWrongWithOneThatCannotBe() {
        signInToAnEmptyClass();
        FilesView view = fresh(FilesView.class);
        press(view, "Add child");
        assertThat(text(view)).contains("The given name: please fill it in.");
        fill(view, "Given name", " Ilse ");
        fill(view, "School's id, if there is one", "k1");
        press(view, "Add child");
        assertThat(text(view)).contains("Ilse is in the class.", "1 child in the class");
        fill(view, "Given name", "Aru");
        fill(view, "School's id, if there is one", "k1");
        press(view, "Add child");
        assertThat(text(view)).contains("The id: another child has it.");
        assertThat(roster.children()).singleElement().satisfies(c -> assertThat(c.givenName()).isEqualTo("Ilse"));
    }

    @Test
    void startsAUnitOnlyOnAProgressionThatIsThere() {
        signInToAnEmptyClass();
        FilesView view = fresh(FilesView.class);
        press(view, "Start a new unit today");
        assertThat(text(view)).contains("A unit needs a title.");
        fill(view, "Title", "Teens");
        fill(view, "Progression", "none-such");
        press(view, "Start a new unit today");
        assertThat(text(view)).contains("There is no progression \"none-such\".", "None yet.");
    }

    @Test
    void aSpecialistChangesNothing() {
        signIn("specialist@sample");
        assertThat(text(fresh(FilesView.class))).contains("Shared with you", "Amadou")
                .doesNotContain("Devika", "Add child", "Let somebody in", "Start a new unit");
    }

    @Test
    void speaksSpanish() {
        signIn("coteacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        assertThat(text(fresh(FilesView.class))).contains("Personas y archivos", "Cargar un archivo", "en la clase")
                .doesNotContain("Take", "Children", "since");
    }
}
