package org.stepwell.table.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.UI;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.test.annotation.DirtiesContext;
import org.stepwell.Application;
import org.stepwell.Screens;

/** Adds looks to the sample class, so it has an application of its own. */
@SpringBootTest(classes = Application.class,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=paper-view"})
@DirtiesContext
class PaperViewTest extends Screens {
    @Test
    void typesAPageInAndKeepsWhatCouldNotBeRead() {
        signIn("teacher@sample");
        PaperView view = fresh(PaperView.class);
        fill(view, "Skill", "T08");
        assertThat(text(view)).contains("A · Counted 34 by ones", "G · Tried, could not start");
        fill(view, "Freya", "34A 47B");
        fill(view, "Ruby", "Q");
        press(view, "Save this page");
        assertThat(text(view)).contains("Ruby: \"Q\" is no mark");
        fill(view, "Ruby", "c");
        press(view, "Save this page");
        assertThat(text(view)).contains("3 looks stored, marked as written on paper.");
        press(view, "Save this page");
        assertThat(text(view)).contains("Nothing is typed in yet.");
    }

    @Test
    void speaksSpanish() {
        signIn("coteacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        assertThat(text(fresh(PaperView.class))).contains("Desde papel", "Intentó, no pudo empezar")
                .doesNotContain("Save", "Skill");
    }
}
