package org.stepwell.trend;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.stepwell.core.trend.WeeklySeries.Week;
import org.stepwell.core.wording.Language;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class TrendChartTest {
    private static final TrendChart CHART = new TrendChart(Language.ENGLISH);
    private static final String DASH = "stroke-dasharray=\"7 5\"";
    private static final String LINE = "stroke-width=\"2\"";

    private static List<Week> weeks(int count) {
        return IntStream.range(0, count).mapToObj(i -> new Week(LocalDate.of(2026, 2, 2).plusWeeks(i),
                1 + i * 0.4, 2)).toList();
    }

    private static Element drawn(String title, int count) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new InputSource(new StringReader(CHART.svg(title, weeks(count), 3))))
                .getDocumentElement();
    }

    @Test
    void hasNoLineBelowThreeWeeks() {
        assertThat(CHART.svg("a", weeks(2), 0)).doesNotContain(LINE);
        assertThat(CHART.finding("a", weeks(2))).contains("Too few weeks");
    }

    @Test
    void isDashedBelowEightWeeksAndSolidFromThere() {
        assertThat(CHART.svg("a", weeks(3), 0)).contains(LINE, DASH);
        assertThat(CHART.svg("a", weeks(7), 0)).contains(DASH);
        assertThat(CHART.svg("a", weeks(8), 0)).contains(LINE).doesNotContain(DASH);
    }

    @Test
    void namesAndDescribesItselfWhateverTheTitle() throws Exception {
        Element svg = drawn("Ten & <ones> \"more\"", 4);
        assertThat(svg.getAttribute("role")).isEqualTo("img");
        Element title = (Element) svg.getElementsByTagName("title").item(0);
        Element description = (Element) svg.getElementsByTagName("desc").item(0);
        assertThat(title.getTextContent()).isEqualTo("Ten & <ones> \"more\"");
        assertThat(svg.getAttribute("aria-labelledby").split(" "))
                .containsExactly(title.getAttribute("id"), description.getAttribute("id"));
    }

    @Test
    void standsHigherForAHigherStepAndLeavesAGapForAWeekWithoutLooks() throws Exception {
        List<Week> gap = List.of(new Week(LocalDate.of(2026, 2, 2), 1, 1), new Week(LocalDate.of(2026, 2, 9), 2, 1),
                new Week(LocalDate.of(2026, 2, 23), 3, 1));
        NodeList dots = DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new InputSource(new StringReader(CHART.svg("a", gap, 0)))).getDocumentElement()
                .getElementsByTagName("circle");
        double[] x = IntStream.range(0, 3).mapToDouble(i -> value(dots, i, "cx")).toArray();
        double[] y = IntStream.range(0, 3).mapToDouble(i -> value(dots, i, "cy")).toArray();
        assertThat(y[0]).isGreaterThan(y[1]);
        assertThat(y[1]).isGreaterThan(y[2]);
        assertThat((x[2] - x[1]) / (x[1] - x[0])).isBetween(1.99, 2.01);
    }

    private static double value(NodeList dots, int index, String name) {
        return Double.parseDouble(((Element) dots.item(index)).getAttribute(name));
    }
}
