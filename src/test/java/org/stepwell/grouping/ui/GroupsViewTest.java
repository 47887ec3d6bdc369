package org.stepwell.grouping.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.Paragraph;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.Application;
import org.stepwell.TestDatabase;
import org.stepwell.core.grouping.Wish;
import org.stepwell.grouping.GroupingService;
import org.stepwell.grouping.SampleSignIn;
import org.stepwell.roster.RosterService;

@SpringBootTest(classes = Application.class, webEnvironment = WebEnvironment.RANDOM_PORT,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=groups-view"})
@Import(TestDatabase.InSpring.class)
@DirtiesContext
class GroupsViewTest extends SpringBrowserlessTest {
    @Autowired
    private GroupingService groupings;
    @Autowired
    private RosterService roster;
    @Autowired
    private JdbcClient jdbc;
    @Autowired
    private TransactionTemplate transaction;
    private UUID room;

    @BeforeEach
    void opens() {
        SampleSignIn.as("teacher@sample", jdbc, transaction);
        room = roster.classes().getFirst().classId();
    }

    @AfterEach
    void signsOut() {
        SecurityContextHolder.clearContext();
    }

    private List<String> buttons() {
        return $(NativeButton.class).all().stream().map(NativeButton::getText).toList();
    }

    private void press(String text) {
        test($(NativeButton.class).all().stream().filter(b -> b.getText().equals(text)).findFirst().orElseThrow())
                .click();
    }

    private List<List<String>> groups() {
        List<List<String>> groups = new ArrayList<>();
        for (Div column : $(Div.class).all()) {
            if (column.hasClassName("board-group")) {
                List<String> names = new ArrayList<>();
                collect(column, names);
                groups.add(names);
            }
        }
        return groups;
    }

    private static void collect(Component from, List<String> names) {
        if (from instanceof NativeButton button && button.hasClassName("board-child")) {
            names.add(button.getText());
        }
        from.getChildren().forEach(child -> collect(child, names));
    }

    private boolean says(String part) {
        return $(Paragraph.class).all().stream().anyMatch(p -> p.getText().contains(part));
    }

    @Test
    void suggestsSideBySideChangesByHandAndSaves() {
        navigate(GroupsView.class);
        press("Suggest groups");
        assertThat(buttons().stream().filter("Take this to the board"::equals)).hasSizeBetween(2, 3);
        press("Take this to the board");
        List<List<String>> before = groups();
        assertThat(before).hasSize(5).allSatisfy(g -> assertThat(g).hasSizeBetween(4, 5));
        String one = before.get(0).get(0);
        String other = before.get(1).get(0);
        press(one);
        press(other);
        assertThat(groups().get(0)).contains(other).doesNotContain(one);
        assertThat(groups().get(1)).contains(one).doesNotContain(other);
        assertThat(says(one + " and " + other + " have swapped places.")).isTrue();
        press("Save these groups");
        var saved = groupings.seating(room, groupings.picture(room).day()).orElseThrow();
        String key = roster.children(room).stream().filter(c -> c.label().equals(one)).findFirst().orElseThrow()
                .schoolKey();
        assertThat(saved.places().get(key).group()).isEqualTo(2);
        assertThat(saved.places().get(key).reason()).isNotBlank();
        assertThat(saved.savedBy()).isNotBlank();
    }

    @Test
    void aMoveThatBreaksAWishOrEvennessIsSaidAtOnce() {
        List<String> ids = roster.children(room).stream().map(c -> c.schoolKey()).toList();
        List<String> labels = roster.children(room).stream().map(c -> c.label()).toList();
        Wish wish = new Wish.Apart(ids.get(0), ids.get(1));
        groupings.wish(room, wish, true);
        navigate(GroupsView.class);
        press("Suggest groups");
        press("Take this to the board");
        assertThat(says("Not kept")).isFalse();
        int home = 0;
        for (int g = 0; g < 5; g++) {
            home = groups().get(g).contains(labels.get(1)) ? g : home;
        }
        press(labels.get(0));
        int at = home;
        List<NativeButton> here = $(NativeButton.class).all().stream()
                .filter(b -> b.getText().equals(labels.get(0) + " here")).toList();
        assertThat(here).hasSize(4);
        int from = 0;
        for (int g = 0; g < 5; g++) {
            from = groups().get(g).contains(labels.get(0)) ? g : from;
        }
        test(here.get(at < from ? at : at - 1)).click();
        assertThat(groups().get(home)).contains(labels.get(0), labels.get(1));
        assertThat(says("Not kept: ")).isTrue();
        groupings.wish(room, wish, false);
    }

    @Test
    void impossibleWishesAreNamedByTheNamesUsedInClass() {
        var children = roster.children(room);
        List<Wish> wishes = List.of(new Wish.Apart(children.get(2).schoolKey(), children.get(3).schoolKey()),
                new Wish.Together(children.get(2).schoolKey(), children.get(3).schoolKey()));
        wishes.forEach(w -> groupings.wish(room, w, true));
        navigate(GroupsView.class);
        press("Suggest groups");
        assertThat(says(children.get(2).label()) && says(children.get(3).label())
                && says("are to be both together and apart.")).isTrue();
        assertThat(buttons()).doesNotContain("Take this to the board");
        wishes.forEach(w -> groupings.wish(room, w, false));
    }

    @Test
    void aPinnedChildStaysWhereItIs() {
        navigate(GroupsView.class);
        String name = groups().get(4).getFirst();
        test($(NativeButton.class).all().stream().filter(b -> ("Pin " + name).equals(
                b.getElement().getAttribute("aria-label"))).findFirst().orElseThrow()).click();
        press("Suggest groups");
        press("Take this to the board");
        assertThat(groups().get(4)).contains(name);
    }

    @Test
    void tomorrowsTableSwapsTwoAndKeepsANumberForThatDayOnly() {
        navigate(GroupsView.class);
        press("Suggest groups");
        press("Take this to the board");
        press("Save these groups");
        navigate(TomorrowView.class);
        assertThat($(H1.class).all().stream().map(H1::getText)).contains("Tomorrow's table");
        String one = groups().get(0).get(0);
        String other = groups().get(2).get(1);
        press(one);
        press(other);
        press(buttons().stream().filter(b -> b.startsWith("Save for ")).findFirst().orElseThrow());
        var today = groupings.picture(room).day();
        var usual = groupings.seating(room, today).orElseThrow();
        var newest = groupings.history(room).getFirst();
        assertThat(newest.kind().name()).isEqualTo("DAY");
        assertThat(newest.forOn()).isAfter(today);
        var changed = new TreeMap<>(usual.groupOf());
        String oneKey = roster.children(room).stream().filter(c -> c.label().equals(one)).findFirst().orElseThrow()
                .schoolKey();
        String otherKey = roster.children(room).stream().filter(c -> c.label().equals(other)).findFirst()
                .orElseThrow().schoolKey();
        changed.put(oneKey, 3);
        changed.put(otherKey, 1);
        assertThat(newest.groupOf()).isEqualTo(changed);
    }
}
