package org.stepwell.trend;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.trend.ExpectedStep;
import org.stepwell.core.trend.Trend;
import org.stepwell.core.trend.TrendGoal;
import org.stepwell.core.wording.Language;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class TrendChartTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 2, 2);
    private static final TrendChart CHART = new TrendChart(Language.ENGLISH);
    private static final SchoolCalendar CALENDAR = new SchoolCalendar(List.of());

    private static DayStep day(int week, int step) {
        return new DayStep(MONDAY.plusWeeks(week), "T05", step, false, List.of());
    }

    private static Trend weeks(int count, TrendGoal... goals) {
        return Trend.ofSkill("T05", IntStream.range(0, count).mapToObj(i -> day(i, 1 + i / 3)).toList(), CALENDAR,
                MONDAY.plusWeeks(count - 1), List.of(goals));
    }

    private static Element drawn(Trend trend, String title, List<ExpectedStep> expected, TrendChart.Phase... phases)
            throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new InputSource(new StringReader(CHART.svg("one", title, trend, expected, List.of(phases)))))
                .getDocumentElement();
    }

    private static List<Element> all(Element svg, String tag, String kind) {
        NodeList nodes = svg.getElementsByTagName(tag);
        List<Element> found = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            Element one = (Element) nodes.item(i);
            if (kind.isEmpty() || one.getAttribute("class").equals(kind)) {
                found.add(one);
            }
        }
        return found;
    }

    private static double number(Element element, String name) {
        return Double.parseDouble(element.getAttribute(name));
    }

    private static List<String> words(Element svg) {
        return all(svg, "text", "").stream().map(Element::getTextContent).toList();
    }

    @ParameterizedTest
    @CsvSource({"1, 0, ''", "2, 0, ''", "3, 1, 9 6", "7, 1, 9 6", "8, 1, ''"})
    void drawsNoLineAsMoreCertainThanItIs(int count, int lines, String dash) throws Exception {
        List<Element> fit = all(drawn(weeks(count), "a", List.of()), "line", "fit");
        assertThat(fit).hasSize(lines);
        fit.forEach(line -> assertThat(line.getAttribute("stroke-dasharray")).isEqualTo(dash));
    }

    @Test
    void showsHowMuchElseFitsThePointsAsAFanThroughTheirMiddle() throws Exception {
        Trend trend = Trend.ofSkill("T05", List.of(day(0, 1), day(1, 3), day(2, 2), day(3, 3)), CALENDAR,
                MONDAY.plusWeeks(3), List.of());
        Element fan = all(drawn(trend, "a", List.of()), "polygon", "").getFirst();
        String[] corners = fan.getAttribute("points").split(" ");
        assertThat(corners).hasSize(6);
        double lowEnd = Double.parseDouble(corners[2].split(",")[1]);
        double highEnd = Double.parseDouble(corners[3].split(",")[1]);
        assertThat(highEnd).as("the steeper slope ends higher up, at a smaller y").isLessThan(lowEnd);
        assertThat(corners[1]).isEqualTo(corners[4]);
    }

    @Test
    void namesAndDescribesItselfWhateverTheTitle() throws Exception {
        Element svg = drawn(weeks(4), "Ten & <ones> \"more\"", List.of());
        assertThat(svg.getAttribute("role")).isEqualTo("img");
        Element title = (Element) svg.getElementsByTagName("title").item(0);
        Element description = (Element) svg.getElementsByTagName("desc").item(0);
        assertThat(title.getTextContent()).isEqualTo("Ten & <ones> \"more\"");
        assertThat(description.getTextContent()).contains("4 weeks with looks, from step 1.0 to step 2.0.");
        assertThat(svg.getAttribute("aria-labelledby").split(" "))
                .containsExactly(title.getAttribute("id"), description.getAttribute("id"));
    }

    @Test
    void standsHigherForAHigherStepAndBreaksTheHairlineWhereNobodyLooked() throws Exception {
        SchoolCalendar closed = new SchoolCalendar(List.of(
                new SchoolCalendar.Break(MONDAY.plusWeeks(3), MONDAY.plusWeeks(3).plusDays(4), "water")));
        Trend trend = Trend.ofSkill("T05", List.of(day(0, 1), day(1, 2), day(4, 3)), closed,
                MONDAY.plusWeeks(5).plusDays(2), List.of());
        Element svg = drawn(trend, "a", List.of());
        List<Element> dots = all(svg, "circle", "");
        assertThat(dots).extracting(d -> number(d, "cy")).isSortedAccordingTo((a, b) -> Double.compare(b, a));
        double first = number(dots.get(1), "cx") - number(dots.get(0), "cx");
        assertThat((number(dots.get(2), "cx") - number(dots.get(1), "cx")) / first).isBetween(2.98, 3.02);
        assertThat(all(svg, "line", "join")).hasSize(1);
        assertThat(all(svg, "rect", "unseen")).hasSize(1);
        assertThat(all(svg, "rect", "closed")).hasSize(1);
        assertThat(new TrendWording(Language.ENGLISH).gaps(trend))
                .isEqualTo("2 weeks without a look (hatched): not seen is not zero. In 1 of them there was no school.");
    }

    @Test
    void drawsTheExpectedStepWhereItHolds() throws Exception {
        Pacing pacing = new Pacing(List.of(new PacingRow("T05", null, MONDAY.minusWeeks(2), 3),
                new PacingRow("T05", null, MONDAY.plusWeeks(2), 4)));
        List<ExpectedStep> spans = ExpectedStep.of("T05", pacing, MONDAY, MONDAY.plusWeeks(3));
        assertThat(spans).containsExactly(
                new ExpectedStep(MONDAY, MONDAY.plusWeeks(2).minusDays(1), 3),
                new ExpectedStep(MONDAY.plusWeeks(2), MONDAY.plusWeeks(3), 4));
        assertThat(words(drawn(weeks(4), "a", spans))).contains("expected 3", "expected 4");
    }

    @Test
    void givesTheGoalAnAxisOfItsOwn() throws Exception {
        TrendGoal goal = new TrendGoal("T05", MONDAY, 1, MONDAY.plusWeeks(8), 4);
        assertThat(all(drawn(weeks(4), "a", List.of()), "line", "goal-axis")).isEmpty();
        Element svg = drawn(weeks(4, goal), "a", List.of());
        Element line = all(svg, "line", "goal").getFirst();
        Element axis = all(svg, "line", "goal-axis").getFirst();
        assertThat(number(line, "y1")).isEqualTo(number(axis, "y1"));
        assertThat(number(line, "y2")).isEqualTo(number(axis, "y2"));
        assertThat(words(svg)).contains("goal", "1.0", "4.0");
        TrendGoal other = new TrendGoal("T06", MONDAY, 1, MONDAY.plusWeeks(8), 4);
        assertThat(all(drawn(weeks(4, other), "a", List.of()), "line", "goal")).isEmpty();
    }

    @Test
    void lettersTheDaysOnWhichADecisionChangedTheHelp() throws Exception {
        TrendChart.Phase before = new TrendChart.Phase(MONDAY.minusDays(3), "Support");
        TrendChart.Phase within = new TrendChart.Phase(MONDAY.plusDays(10), "On level");
        Element svg = drawn(weeks(4), "a", List.of(), before, within);
        assertThat(all(svg, "line", "phase")).hasSize(1);
        assertThat(words(svg)).contains("b").doesNotContain("a");
    }

    @Test
    void showsHowLittleAFewSkillsSayAboutAShare() throws Exception {
        Pacing pacing = new Pacing(List.of(new PacingRow("T05", null, MONDAY, 3)));
        Trend unit = Trend.ofUnit(List.of(day(0, 3), day(1, 2)), pacing, CALENDAR, MONDAY.plusWeeks(1), List.of());
        Element svg = drawn(unit, "a", List.of());
        assertThat(all(svg, "line", "whisker")).hasSize(2);
        assertThat(words(svg)).contains("none", "half", "all");
        assertThat(new TrendWording(Language.ENGLISH).interval(unit.points().getFirst()))
                .as("Wilson 1927 for 1 of 1: 0.2065 to 1").isEqualTo("2.1 to 10.0 of 10");
    }

    @Test
    void drawsAnEmptySeriesWithoutAPoint() throws Exception {
        Element svg = drawn(Trend.ofSkill("T05", List.of(), CALENDAR, MONDAY, List.of()), "T05", List.of());
        assertThat(all(svg, "circle", "")).isEmpty();
        assertThat(svg.getElementsByTagName("desc").item(0).getTextContent()).isEqualTo("T05: not seen yet.");
    }
}
