package org.stepwell.roster.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.dom.Element;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.context.SecurityContextHolder;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.roster.AdultService;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.EnrolmentService;
import org.stepwell.roster.Grown;
import org.stepwell.roster.Invitations.Role;
import org.stepwell.roster.RosterService;

@SpringBootTest(classes = Application.class, properties = "STEPWELL_SAMPLE=off")
@Import(TestDatabase.InSpring.class)
class PeoplePanelsTest extends SpringBrowserlessTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    @Autowired
    private EnrolmentService enrolments;
    @Autowired
    private AdultService adults;
    @Autowired
    private RosterService roster;
    @Autowired
    private DataSource dataSource;
    private Grown grown;
    private Component panel;

    @BeforeEach
    void founds() {
        grown = new Grown(dataSource, Clock.systemUTC()).terminal("t", Role.TEACHER, "Room 1")
                .terminal("l", Role.LEAD, null);
        UI.getCurrent().setLocale(Locale.US);
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    private void children(String who) {
        grown.as(who);
        List<Classroom> classes = roster.classes();
        show(new ChildrenPanel(enrolments, classes.getFirst(), classes, TODAY));
    }

    private void adults(String who) {
        SignedIn self = grown.as(who);
        show(new AdultsPanel(adults, roster.classes().getFirst(), self));
    }

    private void show(Component shown) {
        panel = shown;
        UI.getCurrent().removeAll();
        UI.getCurrent().add(shown);
    }

    private static Stream<Element> all(Element root) {
        return Stream.concat(Stream.of(root), root.getChildren().flatMap(PeoplePanelsTest::all));
    }

    private String text() {
        return all(panel.getElement()).filter(Element::isTextNode).map(Element::getText).reduce("",
                (before, next) -> before + " " + next);
    }

    private void fill(String label, String value) {
        Element words = all(panel.getElement()).filter(e -> !e.isTextNode() && e.getTag().equals("label")
                && e.getTextRecursively().equals(label)).findFirst().orElseThrow();
        Element control = all(panel.getElement()).filter(e -> !e.isTextNode()
                && words.getAttribute("for").equals(e.getAttribute("id"))).findFirst().orElseThrow();
        control.setProperty("value", value);
    }

    private void press(String name) {
        NativeButton button = $(NativeButton.class, panel).all().stream()
                .filter(b -> name.equals(b.getElement().getAttribute("aria-label")) || b.getText().equals(name))
                .findFirst().orElseThrow(() -> new AssertionError("no button " + name + " in" + text()));
        test(button).click();
    }

    private List<String> buttons() {
        return $(NativeButton.class, panel).all().stream().map(NativeButton::getText).toList();
    }

    @Test
    void anEmptyClassSaysWhatComesNextAndAChildIsAdded() {
        children("t");
        assertThat(text()).contains("Nobody is in the class yet").contains("Add the first child here");
        press("Add child");
        assertThat(text()).contains("The given name: please fill it in.");
        fill("Given name", "Ilse");
        fill("Family name, may be empty", "Brandvold");
        press("Add child");
        assertThat(text()).contains("Ilse is in the class.").contains("1 child in the class")
                .contains("Ilse Brandvold").contains("Grade 1");
    }

    @Test
    void aChildIsCorrectedEndedAndKept() {
        children("t");
        fill("Given name", "Ilse");
        press("Add child");
        press("Change: Ilse");
        fill("Last day in this class", "2000-01-01");
        press("Set the last day");
        assertThat(text()).contains("before the first day in this class");
        fill("Last day in this class", "not a day");
        press("Set the last day");
        assertThat(text()).contains("that is no date");
        LocalDate last = enrolments.inClass(roster.classes().getFirst().classId()).getFirst().startsOn().plusDays(7);
        fill("Last day in this class", last.toString());
        press("Set the last day");
        assertThat(text()).contains("Ilse is in the class until");
        press("Change: Ilse");
        press("Goes on in this class");
        assertThat(text()).contains("Ilse goes on in the class.").doesNotContain("until");
    }

    @Test
    void aTeacherMakesACodeThatIsShownOnceAndTakesItBack() {
        adults("t");
        assertThat(text()).contains("You are the only adult").contains("l, School lead");
        press("Make a code");
        assertThat(text()).contains("Please write a name");
        fill("For whom", "Bo Lund");
        press("Make a code");
        assertThat(text()).contains("For Bo Lund, Co-teacher").containsPattern("\\d+-([a-z2-9]{4}-){3}[a-z2-9]{4}")
                .contains("It is shown only now").contains("Bo Lund, Co-teacher, good until");
        press("Close");
        assertThat(text()).doesNotContainPattern("\\d+-([a-z2-9]{4}-){3}[a-z2-9]{4}");
        press("Take back: Bo Lund");
        assertThat(text()).contains("The code for Bo Lund opens nothing any more.").doesNotContain("good until");
    }

    @Test
    void endingAccessAsksFirstAndTheLastTeacherStays() {
        adults("l");
        press("End access: t");
        assertThat(text()).contains("End the access of t to this class now?");
        press("No, keep it");
        assertThat(text()).doesNotContain("End the access of t");
        press("End access: t");
        press("Yes, end it now");
        assertThat(text()).contains("A class keeps at least one teacher");
        grown.terminal("t2", Role.TEACHER, "Room 1");
        adults("l");
        press("End access: t");
        press("Yes, end it now");
        assertThat(text()).contains("The access of t is over.").doesNotContain("t (you)");
    }

    @Test
    void whoMayLetNobodyInIsOfferedNothing() {
        grown.terminal("a", Role.AIDE, "Room 1");
        adults("a");
        assertThat(text()).contains("a (you), Aide").doesNotContain("Let somebody in");
        assertThat(buttons()).containsExactly("Leave this class");
    }

    @Test
    void speaksSpanish() {
        UI.getCurrent().setLocale(Locale.forLanguageTag("es"));
        children("t");
        fill("Nombre", "Ilse");
        press("Añadir");
        assertThat(text()).contains("Ilse está en la clase.");
    }
}
