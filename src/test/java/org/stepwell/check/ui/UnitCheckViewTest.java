package org.stepwell.check.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.stepwell.Screens;
import org.stepwell.check.CheckService;
import org.stepwell.check.CheckService.Tap;
import org.stepwell.check.CheckSitting;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.Mark;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

class UnitCheckViewTest extends Screens {
    @Autowired
    private CheckService checks;
    @Autowired
    private RosterService roster;

    private UUID room() {
        return roster.classes().getFirst().classId();
    }

    private UUID made(String title, CheckItem... items) {
        return checks.create(room(), title, today(), List.of(items));
    }

    private static CheckItem item(int at, String skill, int step) {
        return new CheckItem("i%02d".formatted(at), skill, step, "", "");
    }

    private <T extends Component> T open(UUID check, String screen, Class<T> view) {
        return navigate("unit-check/" + check + "/" + screen, view);
    }

    @Test
    void offersABlueprintFromTheSkillsOfTheUnit() {
        signIn("teacher@sample");
        UnitCheckView view = fresh(UnitCheckView.class);
        assertThat(text(view)).contains("Starts from the skills of the unit: T05, T06, T07, T08, T11");
        fill(view, "Day", "soon");
        press(view, "Make a blueprint");
        assertThat(text(view)).contains("This is no date");
        fill(view, "Day", "2026-03-06");
        fill(view, "Name", "Tens check");
        press(view, "Make a blueprint");
        assertThat(getCurrentView()).isInstanceOf(BlueprintView.class);
        assertThat(text((Component) getCurrentView())).contains("Tens check", "20 items", "i20");
        assertThat(text(fresh(UnitCheckView.class))).contains("Tens check", "March 6", "20 items",
                "0 of 23 children have marks", "do not count as evidence yet");
    }

    @Test
    void warnsWhereTheBlueprintBearsNoStatementAndKeepsNumbersOfItems() {
        signIn("teacher@sample");
        UUID check = made("Few", item(1, "T05", 3), item(2, "T05", 3), item(3, "T05", 3), item(4, "T04", 3));
        BlueprintView view = open(check, "blueprint", BlueprintView.class);
        assertThat(text(view)).contains("T04 has 1 item: below 3", "T06 is in the unit, but no item asks for it");
        press(view, "×");
        assertThat(text(view)).contains("3 items", "T05 has 2 items");
        press(view, "Add an item");
        press(view, "Save blueprint");
        assertThat(text(view)).contains("Saved.");
        assertThat(checks.sheet(check).items()).extracting(CheckItem::code).containsExactly("i02", "i03", "i04",
                "i05");
    }

    @Test
    void saysWhoHasToMakeItUpAndWhatTheTwoEntriesDifferIn() {
        signIn("teacher@sample");
        UUID check = made("Absent", item(1, "T05", 3), item(2, "T05", 3));
        List<ChildRow> children = roster.children(room());
        checks.sit(check, children.get(1).childId(), new CheckSitting(true, null, ""));
        checks.mark(check, List.of(new Tap(children.getFirst().childId(), "i01", 1, 0, Mark.WRONG, null),
                new Tap(children.getFirst().childId(), "i01", 2, 0, Mark.RIGHT, null)));
        ScoreView view = open(check, "score", ScoreView.class);
        assertThat(text(view)).contains("To make up: " + children.get(1).label());
        fill(view, children.get(1).label() + " made it up on", "2026-03-10");
        assertThat(checks.sheet(check).sitting(children.get(1).childId()).satOn()).hasToString("2026-03-10");
        ScoreView second = open(check, "score/2", ScoreView.class);
        press(second, "Compare with the first entry");
        assertThat(text(second)).contains("1 cell differs among 1", "i01: first wrong, second right");
        press(second, "right holds");
        assertThat(text(second)).contains("No cell differs");
        assertThat(checks.sheet(check).marks(children.getFirst().childId(), 1)).containsEntry("i01", Mark.RIGHT);
    }

    @Test
    void readsByChildByItemAndAsAWholeInPlainWords() {
        signIn("teacher@sample");
        UUID check = made("Read", item(1, "T05", 4), item(2, "T05", 4), item(3, "T05", 4), item(4, "T06", 4));
        assertThat(text(open(check, "results", ResultsView.class))).contains("No marks yet");
        List<ChildRow> children = roster.children(room());
        for (int c = 0; c < 12; c++) {
            for (int i = 1; i <= 4; i++) {
                checks.mark(check, List.of(new Tap(children.get(c).childId(), "i%02d".formatted(i), 1, 0,
                        c % (i + 1) == 0 ? Mark.WRONG : Mark.RIGHT, null)));
            }
        }
        ResultsView view = open(check, "results", ResultsView.class);
        assertThat(text(view)).contains("12 of 23 children, 4 items.", "Reliability (KR-20)",
                "With 12 children item figures are rough", "too few items to say",
                "Waiting for it is no reason to delay a referral", "Was not there:");
        press(view, "Let these marks count");
        assertThat(text(view)).contains("These marks count as evidence.");
        press(view, "Make a retake");
        assertThat(getCurrentView()).isInstanceOf(ScoreView.class);
        assertThat(text((Component) getCurrentView())).contains("Read: retake");
    }

    @Test
    void speaksSpanishToo() {
        signIn("teacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es"));
        assertThat(text(fresh(UnitCheckView.class))).contains("Prueba de la unidad", "Hacer un plan");
    }

    @Test
    void tellsASpecialistThatChecksAreTheClasss() {
        signIn("specialist@sample");
        assertThat(text(fresh(UnitCheckView.class))).contains("Only adults of the class see its checks.");
        signInToAnEmptyClass();
        assertThat(text(fresh(UnitCheckView.class))).contains("No unit with dates yet.");
    }
}
