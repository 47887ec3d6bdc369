package org.stepwell.pacing.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.dom.Element;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
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
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.pacing.PacingService;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.Grown;
import org.stepwell.roster.Invitations.Role;
import org.stepwell.roster.RosterService;

@SpringBootTest(classes = Application.class, properties = "STEPWELL_SAMPLE=off")
@Import(TestDatabase.InSpring.class)
class PacingPanelTest extends SpringBrowserlessTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    @Autowired
    private PacingService pacing;
    @Autowired
    private ProgressionService progressions;
    @Autowired
    private RosterService roster;
    @Autowired
    private DataSource dataSource;
    private UUID room;
    private UUID unit;
    private PacingPanel panel;
    private int saved;

    @BeforeEach
    void startsAUnit() {
        new Grown(dataSource, Clock.systemUTC()).terminal("t", Role.TEACHER, "Room 1").as("t");
        room = roster.classes().getFirst().classId();
        progressions.provide("tens-and-ones");
        unit = pacing.startUnit(room, "tens-and-ones", "Tens", TODAY);
        UI.getCurrent().setLocale(Locale.US);
        show();
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    private void show() {
        panel = new PacingPanel(pacing, room, pacing.unit(room).orElseThrow(), progressions.ofClass(room),
                () -> saved++);
        UI.getCurrent().removeAll();
        UI.getCurrent().add(panel);
    }

    private static Stream<Element> all(Element root) {
        return Stream.concat(Stream.of(root), root.getChildren().flatMap(PacingPanelTest::all));
    }

    private Element control(String skill, String tag) {
        Element line = all(panel.getElement()).filter(e -> !e.isTextNode()
                && ("skill-" + skill).equals(e.getAttribute("aria-labelledby"))).findFirst().orElseThrow();
        return all(line).filter(e -> !e.isTextNode() && e.getTag().equals(tag)).findFirst().orElseThrow();
    }

    private void save() {
        test($(NativeButton.class, panel).single()).click();
    }

    @Test
    void storesALineForEverySkillWithADayAndShowsItAgain() {
        save();
        assertThat(panel.getElement().getTextRecursively()).contains("Choose a day for at least one skill.");
        control("T05", "input").setProperty("value", "2026-03-20");
        control("T05", "select").setProperty("value", "4");
        control("T06", "input").setProperty("value", "2026-04-01");
        save();
        assertThat(saved).isEqualTo(1);
        assertThat(pacing.unit(room).orElseThrow().pacing().rows()).containsExactlyInAnyOrder(
                new PacingRow("T05", null, LocalDate.of(2026, 3, 20), 4),
                new PacingRow("T06", null, LocalDate.of(2026, 4, 1), 3));
        show();
        assertThat(control("T05", "input").getProperty("value")).isEqualTo("2026-03-20");
    }

    @Test
    void saysWhichDayIsNoDateAndStoresNothing() {
        control("T07", "input").setProperty("value", "soon");
        save();
        assertThat(panel.getElement().getTextRecursively()).contains("The day of T07 is no date.");
        assertThat(pacing.unit(room).orElseThrow().pacing().rows()).isEmpty();
    }

    @Test
    void leavesAPacingAloneThatSaysMoreThanTheListHolds() {
        pacing.importPacing(room, unit, List.of(new PacingRow("T05", null, TODAY, 3),
                new PacingRow("T05", null, TODAY.plusDays(20), 4)));
        show();
        assertThat(panel.getElement().getTextRecursively()).contains("Change it by pacing.csv");
        assertThat($(NativeButton.class, panel).all()).isEmpty();
    }
}
