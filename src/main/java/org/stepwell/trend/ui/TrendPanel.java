package org.stepwell.trend.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.Svg;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.trend.ExpectedStep;
import org.stepwell.core.trend.Trend;
import org.stepwell.core.trend.Trend.Scale;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.trend.ChildHistory;
import org.stepwell.trend.TrendChart;
import org.stepwell.trend.TrendWording;

/** The unit and one skill over the weeks: a drawing and a sentence first, numbers and table one tap away. */
public class TrendPanel extends Div {
    private final transient ChildHistory history;
    private final transient TrendWording texts = new TrendWording(Words.language());
    private final transient TrendChart chart = new TrendChart(Words.language());

    /**
     * Draws the skill seen last, or another one, and the unit.
     *
     * @param skill code of the skill to begin with; any other word takes the one seen last
     */
    public TrendPanel(ChildHistory history, String skill) {
        this.history = history;
        String first = history.titles().containsKey(skill) ? skill : history.seenLast();
        Div one = new Div();
        add(Parts.choice(texts.say("skill"), history.titles(), first, key -> skill(one, key)), one);
        skill(one, first);
        Div unit = new Div();
        List<DayStep> all = history.days().values().stream().flatMap(List::stream).toList();
        show(unit, "unit", texts.say("unit"), Trend.ofUnit(all, history.pacing(), history.calendar(),
                history.today(), history.goals()), List.of());
        add(new H3(texts.say("unit")), unit);
    }

    private void skill(Div place, String skill) {
        place.removeAll();
        Trend trend = Trend.ofSkill(skill, history.days().get(skill), history.calendar(), history.today(),
                history.goals());
        show(place, "skill", history.titles().get(skill), trend,
                ExpectedStep.of(skill, history.pacing(), trend.firstMonday(), history.today()));
    }

    private void show(Div place, String id, String title, Trend trend, List<ExpectedStep> expected) {
        place.add(new Svg(chart.svg(id, title, trend, expected, history.phases())));
        place.add(new Paragraph((texts.finding(title, trend) + " " + texts.gaps(trend)).strip()));
        phases(place, trend);
        if (trend.goal() != null) {
            place.add(new Paragraph(texts.goal(trend.goal())), rules(trend));
        }
        Div numbers = new Div();
        Parts.paragraphs(numbers, texts.growth(trend));
        place.add(new NativeDetails(texts.say("growth"), numbers));
        place.add(new NativeDetails(texts.say("table"), table(trend)));
    }

    private void phases(Div place, Trend trend) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < history.phases().size(); i++) {
            TrendChart.Phase phase = history.phases().get(i);
            if (!phase.day().isBefore(trend.firstMonday())) {
                all.add(texts.say("phase", TrendChart.letter(i), texts.day(phase.day()), phase.words()));
            }
        }
        if (!all.isEmpty()) {
            place.add(Parts.soft(texts.say("phases", String.join("; ", all))));
        }
    }

    private Component rules(Trend trend) {
        Div inside = new Div(Parts.soft(texts.say("rules.caution")));
        for (Trend.Ruled one : trend.ruled()) {
            Paragraph says = new Paragraph(texts.rule(one.rule()) + " " + texts.call(one.call()) + ".");
            UnorderedList weak = new UnorderedList();
            texts.weaknesses(one.rule()).forEach(words -> weak.add(new ListItem(words)));
            inside.add(says, weak);
        }
        return new NativeDetails(texts.say("rules"), inside);
    }

    private Component table(Trend trend) {
        boolean steps = trend.scale() == Scale.STEP;
        TreeMap<LocalDate, List<String>> weeks = new TreeMap<>();
        trend.points().forEach(p -> weeks.put(p.monday(),
                List.of(texts.value(p), steps ? Integer.toString(p.days()) : texts.interval(p))));
        trend.gaps().forEach(g -> weeks.put(g.monday(),
                List.of(texts.say(g.noSchool() ? "table.no-school" : "table.not-seen"), "")));
        NativeTableRow head = new NativeTableRow();
        List<String> columns = new ArrayList<>(List.of(texts.say("table.week")));
        columns.addAll(steps
                ? List.of(texts.say("table.mean"), texts.say("table.days"))
                : List.of(texts.say("table.share"), texts.say("table.interval")));
        columns.forEach(column -> head.add(header(column, "col")));
        NativeTableBody body = new NativeTableBody();
        weeks.forEach((monday, cells) -> {
            NativeTableRow row = new NativeTableRow(header(texts.day(monday), "row"));
            cells.forEach(cell -> row.add(new NativeTableCell(cell)));
            body.add(row);
        });
        Div scroll = new Div(new NativeTable(new NativeTableHeader(head), body));
        scroll.addClassName("scroll");
        return scroll;
    }

    private static NativeTableHeaderCell header(String words, String scope) {
        NativeTableHeaderCell cell = new NativeTableHeaderCell(words);
        cell.getElement().setAttribute("scope", scope);
        return cell;
    }
}
