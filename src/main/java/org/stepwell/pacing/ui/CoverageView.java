package org.stepwell.pacing.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.core.check.Coverage;
import org.stepwell.pacing.UnitReadiness;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;

/** Who was looked at how often, on what and by whom; the least seen come first, so that nobody is overlooked. */
@Route("coverage")
@Menu(order = 320, title = "unit.coverage")
@PermitAll
class CoverageView extends Div implements HasDynamicTitle {
    private final Words texts = Words.of("unit");
    private final UnitReadiness readiness;
    private final CurrentAdult current;
    private final Map<String, String> adults;
    private final Div place = new Div();

    CoverageView(RosterService roster, UnitReadiness readiness, CurrentAdult current) {
        this.readiness = readiness;
        this.current = current;
        this.adults = roster.adults();
        add(new H1(texts.say("coverage")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        UUID classId = ClassChoice.of(classes).classId();
        Map<String, String> weeks = new LinkedHashMap<>();
        for (String key : List.of("this", "last", "four")) {
            weeks.put(key, texts.say("coverage.weeks." + key));
        }
        add(ClassChoice.line(classes), Parts.soft(texts.say("coverage.about")),
                Parts.choice(texts.say("coverage.weeks"), weeks, "this", key -> draw(classId, key)), place);
        draw(classId, "this");
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("coverage"));
    }

    private void draw(UUID classId, String weeks) {
        place.removeAll();
        LocalDate today = current.today();
        LocalDate monday = today.with(DayOfWeek.MONDAY);
        LocalDate from = weeks.equals("this") ? monday : weeks.equals("last") ? monday.minusWeeks(1)
                : monday.minusWeeks(3);
        LocalDate to = weeks.equals("last") ? monday.minusDays(1) : today;
        Map<ChildRow, Coverage> all = readiness.coverage(classId, from, to);
        if (all.isEmpty()) {
            place.add(ClassChoice.noChildren());
            return;
        }
        long none = all.values().stream().filter(c -> c.looks() == 0).count();
        long one = all.values().stream().filter(c -> c.looks() == 1).count();
        place.add(new Paragraph(texts.say("coverage.count", none, one, all.size(), texts.day(from), texts.day(to))));
        boolean lead = current.get().lead();
        NativeTableRow heads = new NativeTableRow();
        List<String> columns = new ArrayList<>(List.of("child", "looks", "skills"));
        if (!lead) {
            columns.add("adults");
        }
        columns.add("last");
        for (String column : columns) {
            NativeTableHeaderCell cell = new NativeTableHeaderCell(new Span(texts.say("coverage.head." + column)));
            cell.getElement().setAttribute("scope", "col");
            heads.add(cell);
        }
        NativeTableBody body = new NativeTableBody();
        all.entrySet().stream().sorted(Comparator.comparingInt((Map.Entry<ChildRow, Coverage> e) ->
                e.getValue().looks()).thenComparing(e -> e.getValue().last() == null ? LocalDate.MIN
                        : e.getValue().last())).forEach(e -> body.add(row(e.getKey(), e.getValue(), lead)));
        Div scroll = new Div(new NativeTable(new NativeTableHeader(heads), body));
        scroll.addClassName("scroll");
        scroll.getElement().setAttribute("tabindex", "0").setAttribute("role", "region")
                .setAttribute("aria-label", texts.say("coverage"));
        place.add(scroll);
    }

    private NativeTableRow row(ChildRow child, Coverage coverage, boolean lead) {
        NativeTableHeaderCell name = new NativeTableHeaderCell(child.label());
        name.getElement().setAttribute("scope", "row");
        NativeTableRow row = new NativeTableRow(name, new NativeTableCell(coverage.looks() == 0
                ? texts.say("coverage.none") : texts.say("coverage.looks", coverage.looks(), coverage.days())),
                new NativeTableCell(counts(coverage.bySkill())));
        if (!lead) {
            row.add(new NativeTableCell(counts(named(coverage.byAdult()))));
        }
        row.add(new NativeTableCell(coverage.last() == null ? texts.say("coverage.never")
                : texts.day(coverage.last())));
        return row;
    }

    private SortedMap<String, Integer> named(SortedMap<String, Integer> counts) {
        SortedMap<String, Integer> named = new TreeMap<>();
        counts.forEach((signIn, count) -> named.merge(adults.getOrDefault(signIn, signIn), count, Integer::sum));
        return named;
    }

    private static String counts(SortedMap<String, Integer> counts) {
        return counts.entrySet().stream().map(e -> e.getKey() + " × " + e.getValue())
                .collect(Collectors.joining(", "));
    }
}
