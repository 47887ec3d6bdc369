package org.stepwell.trend.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.dom.Element;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.trend.TrendGoal;
import org.stepwell.trend.ChildHistory;
import org.stepwell.trend.TrendChart;

/** The panel on a page without a browser. */
class TrendPanelTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 2, 2);

    private static List<DayStep> days(String skill, int... steps) {
        return IntStream.range(0, steps.length).filter(i -> steps[i] > 0)
                .mapToObj(i -> new DayStep(MONDAY.plusWeeks(i), skill, steps[i], false, List.of())).toList();
    }

    private static ChildHistory history(TrendGoal... goals) {
        TreeMap<String, List<DayStep>> days = new TreeMap<>();
        days.put("T05", days("T05", 1, 1, 2, 0, 2, 2, 3, 3, 3));
        days.put("T07", days("T07", 1, 2));
        TreeMap<String, String> titles = new TreeMap<>();
        titles.put("T05", "T05 Make a ten");
        titles.put("T07", "T07 Teens");
        Pacing pacing = new Pacing(List.of(new PacingRow("T05", null, MONDAY, 3), new PacingRow("T07", null, MONDAY, 2)));
        return new ChildHistory(titles, days, pacing, new SchoolCalendar(List.of()), MONDAY.plusWeeks(8).plusDays(4),
                List.of(new TrendChart.Phase(MONDAY.plusWeeks(2), "Support")), List.of(goals));
    }

    @BeforeEach
    void opensAPage() {
        UI.setCurrent(new UI());
    }

    @AfterEach
    void closesThePage() {
        UI.setCurrent(null);
    }

    private static String text(TrendPanel panel) {
        return panel.getElement().getTextRecursively();
    }

    private static Stream<Element> elements(Element root) {
        return Stream.concat(Stream.of(root), root.getChildren().flatMap(TrendPanelTest::elements));
    }

    @Test
    void saysWhatTheDrawingShowsAndTheSameAsATable() {
        String said = text(new TrendPanel(history(), "T05"));
        assertThat(said).contains("T05 Make a ten: 8 weeks with looks, from step 1.0 to step 3.0.",
                "1 week without a look (hatched)", "a: February 16, Support", "steps a week by least squares (95 %",
                "The unit: due skills at the expected step", "not seen");
        assertThat(said).doesNotContain("goal", "Goal");
    }

    @Test
    void beginsWithTheSkillSeenLastAndTurnsToAnother() {
        TrendPanel panel = new TrendPanel(history(), "");
        assertThat(text(panel)).contains("T05 Make a ten: 8 weeks");
        elements(panel.getElement()).filter(e -> !e.isTextNode() && e.getTag().equals("select")).findFirst()
                .orElseThrow().setProperty("value", "T07");
        assertThat(text(panel)).contains("T07 Teens: 2 weeks", "Too few weeks for a line.",
                "Below three weeks nothing can be said about growth.").doesNotContain("T05 Make a ten: 8 weeks");
    }

    @Test
    void showsThreeRulesAgainstAGoalWithWhatIsKnownAgainstEach() {
        TrendGoal goal = new TrendGoal("T05", MONDAY, 1, MONDAY.plusWeeks(8), 5);
        String said = text(new TrendPanel(history(goal), "T05"));
        assertThat(said).contains("Goal: step 5.0 by March 30.", "None of them decides.", "Four points. ", "Trend line. ",
                "Interval. ", "growth falls short of the goal", "Hintze and others 2018",
                "A child exactly on the goal is called short half of the time.");
    }

    @Test
    void speaksSpanishToWhomReadsSpanish() {
        UI.getCurrent().setLocale(Locale.forLanguageTag("es"));
        TrendGoal unit = new TrendGoal(null, MONDAY, 0, MONDAY.plusWeeks(8), 0.75);
        assertThat(text(new TrendPanel(history(unit), "T05"))).contains("8 semanas con observaciones",
                "Meta: 7.5 de 10 destrezas para el 30 de marzo.", "Ninguna decide.", "Lo mismo en una tabla");
    }
}
