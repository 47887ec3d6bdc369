package org.stepwell.block.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.dom.Element;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.test.annotation.DirtiesContext;
import org.stepwell.Application;
import org.stepwell.Screens;
import org.stepwell.block.BlockPicture;
import org.stepwell.block.BlockService;
import org.stepwell.grouping.GroupingService;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Kind;
import org.stepwell.grouping.Seating.Place;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Runs a block in the sample class, so it has an application of its own. */
@SpringBootTest(classes = Application.class,
        properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests", "stepwell.test=block-view"})
@DirtiesContext
class BlockViewTest extends Screens {
    @Autowired
    private GroupingService groupings;
    @Autowired
    private RosterService roster;
    @Autowired
    private BlockService blocks;

    private void save(UUID room, LocalDate day, int groups) {
        List<ChildRow> children = roster.children(room);
        Map<String, Place> places = new TreeMap<>();
        for (int i = 0; i < children.size(); i++) {
            places.put(children.get(i).schoolKey(), new Place(1 + i % groups, false, ""));
        }
        groupings.save(room, day, Kind.GROUPS, IntStream.rangeClosed(1, groups)
                .mapToObj(n -> new Group(n, "T05", "", false)).toList(), places);
    }

    @Test
    void leadsFromNothingToARunningBlockAndThroughALoss() {
        signIn("teacher@sample");
        UUID room = roster.classes().getFirst().classId();
        BlockView view = fresh(BlockView.class);
        assertThat(text(view)).contains("No groups are saved for today", "Say first which stations there are",
                "Minutes at the teacher table");
        assertThat(below(view).filter(c -> c instanceof SetUpPanel).flatMap(c -> c.getElement().getChildren())
                .filter(e -> e.getTag().equals("datalist")).flatMap(Element::getChildren).map(e -> e.getAttribute("value")))
                .as("adults of the class, no lead").contains("Rafael Osterlund").doesNotContain("Anselm Varga");
        press(view, "Save stations and times");
        assertThat(text(view)).contains("No groups are saved for today").doesNotContain("Say first");
        save(room, today(), 6);
        view = fresh(BlockView.class);
        assertThat(text(view)).contains("Groups: 6. Stations: 5.").doesNotContain("Begin the block");
        save(room, today(), 5);
        view = fresh(BlockView.class);
        assertThat(text(view)).doesNotContain("Sit together today");
        List<ChildRow> fifth = IntStream.range(0, 23).filter(i -> i % 5 == 4).mapToObj(roster.children(room)::get).toList();
        fifth.subList(0, 3).forEach(child -> blocks.absent(room, child.childId(), true));
        view = fresh(BlockView.class);
        assertThat(text(view)).contains("Group 5: one child is there today.");
        press(view, "Sit together today");
        assertThat(text(view)).doesNotContain("Sit together today").doesNotContain("Group 5: minutes")
                .doesNotContain("Group 5: in turn").contains("Group 4: in turn");
        BlockPicture joined = blocks.picture(room);
        assertThat(joined.groups().kind()).isEqualTo(Kind.DAY);
        assertThat(joined.groups().groupOf()).containsEntry(fifth.getLast().schoolKey(), 4).doesNotContainValue(5);
        assertThat(groupings.seating(room, today().plusDays(1)).orElseThrow().groupOf()).as("tomorrow as before")
                .containsEntry(fifth.getLast().schoolKey(), 5);
        fill(view, "First rotation at", "09:30");
        fill(view, "Rotations today", "3");
        press(view, "Begin the block");
        assertThat(text(view)).contains("Today, begun 9:30", "Group 5", "Teacher table", "Time is lost",
                "Sheet for a substitute", "Who meets the teacher", "Aiyana").doesNotContain("Begin the block");
        assertThat(below(view).filter(NativeTableHeaderCell.class::isInstance).map(c -> c.getElement().getTextRecursively())
                .filter(head -> head.startsWith("Group"))).as("a row for each group with children").hasSize(4)
                .noneMatch(head -> head.startsWith("Group 5"));
        assertThat(below(view).filter(Anchor.class::isInstance).map(a -> ((Anchor) a).getHref()))
                .anyMatch(href -> href.contains("/sheet.pdf?for=substitute&lang=en"));
        fill(view, "Minutes lost from now", "none");
        press(view, "Show the ways");
        assertThat(text(view)).contains("Say how many minutes were lost");
    }

    @Test
    void saysWhoMayRunABlockAndSpeaksSpanish() {
        signIn("specialist@sample");
        assertThat(text(fresh(BlockView.class))).contains("Only adults of the class run its block.");
        signIn("coteacher@sample");
        UI.getCurrent().setLocale(Locale.forLanguageTag("es-US"));
        BlockView view = fresh(BlockView.class);
        assertThat(text(view)).contains("Bloque de matemáticas", "Estaciones y horas")
                .doesNotContain("Station", "Minutes", "Save");
        assertThat(view.getPageTitle()).isEqualTo("Bloque de matemáticas · Stepwell");
    }
}
