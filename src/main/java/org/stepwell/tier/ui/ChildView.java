package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.Svg;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.NotFoundException;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.trend.WeeklySeries;
import org.stepwell.core.trend.WeeklySeries.Week;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.DecisionLine;
import org.stepwell.tier.TierService;
import org.stepwell.trend.TrendChart;

/** One child: the support that runs and why, a trend, every look with its history. */
@Route("child/:child/:skill?")
@PermitAll
class ChildView extends Div implements BeforeEnterObserver, HasDynamicTitle {
    private final RosterService roster;
    private final TierService tiers;
    private final ObservationService observations;
    private final Words texts = Words.of("tier");
    private @Nullable UUID childId;
    private String skill = "";

    ChildView(RosterService roster, TierService tiers, ObservationService observations) {
        this.roster = roster;
        this.tiers = tiers;
        this.observations = observations;
    }

    /** No name: titles stay behind in tabs and histories that others see. */
    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("child"));
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        try {
            childId = UUID.fromString(event.getRouteParameters().get("child").orElse(""));
            skill = event.getRouteParameters().get("skill").orElse("");
            draw();
        } catch (IllegalArgumentException | NotVisible nothing) {
            event.rerouteToError(NotFoundException.class);
        }
    }

    private void draw() {
        removeAll();
        ChildRow child = roster.child(childId);
        ClassPicture picture = tiers.picture(child.classId());
        OneChild one = picture.children().stream().filter(c -> c.row().childId().equals(childId)).findFirst()
                .orElseThrow(NotVisible::new);
        add(new H1(child.label()));
        add(tier(picture, one), trend(picture, one));
        add(new LooksPanel(child, picture, observations, this::draw));
        add(decisions());
    }

    private Component tier(ClassPicture picture, OneChild one) {
        SuggestionWording words = new SuggestionWording(Words.language(), picture.progression());
        Div sheet = Parts.sheet(new H2(texts.say("child.tier")), Parts.tier(one.state().tier()));
        picture.review().of(one.row().schoolKey()).ifPresent(suggestion -> {
            sheet.add(new Paragraph(words.reason(suggestion)));
            suggestion.cautions().stream().limit(2).forEach(caution -> {
                Paragraph text = new Paragraph(words.caution(caution));
                text.addClassName("caution");
                sheet.add(text);
            });
        });
        return sheet;
    }

    private Component trend(ClassPicture picture, OneChild one) {
        EffectiveLooks effective = EffectiveLooks.of(picture.looks(), picture.progression(), picture.day());
        Map<String, String> options = new LinkedHashMap<>();
        one.picture().skills().values().stream().filter(e -> e.seen())
                .forEach(e -> options.put(e.skill(), e.skill() + " "
                        + picture.progression().titles().getOrDefault(e.skill(), "")));
        Div sheet = Parts.sheet(new H2(texts.say("child.trend")));
        if (options.isEmpty()) {
            sheet.add(Parts.soft(texts.say("child.unseen")));
            return sheet;
        }
        String chosen = options.containsKey(skill) ? skill : options.keySet().stream()
                .max(java.util.Comparator.comparing(s -> one.picture().skills().get(s).lastSeen())).orElseThrow();
        Div chart = new Div();
        sheet.add(Parts.choice(texts.say("skill"), options, chosen, key -> draw(chart, picture, one, effective, key,
                options.get(key))), chart);
        draw(chart, picture, one, effective, chosen, options.get(chosen));
        return sheet;
    }

    private void draw(Div chart, ClassPicture picture, OneChild one, EffectiveLooks effective, String skill,
            String title) {
        chart.removeAll();
        List<Week> weeks = WeeklySeries.of(effective.days(one.row().schoolKey(), skill));
        TrendChart drawing = new TrendChart(Words.language());
        chart.add(new Svg(drawing.svg(title, weeks, picture.due().getOrDefault(skill, 0))));
        chart.add(new Paragraph(drawing.finding(title, weeks)));
        NativeTableBody body = new NativeTableBody();
        weeks.forEach(week -> {
            NativeTableHeaderCell monday = new NativeTableHeaderCell(texts.day(week.monday()));
            monday.getElement().setAttribute("scope", "row");
            body.add(new NativeTableRow(monday, new NativeTableCell(drawing.number(week.mean())),
                    new NativeTableCell(Integer.toString(week.days()))));
        });
        NativeTableRow head = new NativeTableRow();
        for (String column : List.of(texts.say("trend.week"), texts.say("trend.mean"),
                texts.say("trend.days"))) {
            NativeTableHeaderCell cell = new NativeTableHeaderCell(column);
            cell.getElement().setAttribute("scope", "col");
            head.add(cell);
        }
        chart.add(new NativeDetails(texts.say("trend.table"), new NativeTable(new NativeTableHeader(head), body)));
    }

    private Component decisions() {
        Div sheet = Parts.sheet(new H2(texts.say("decisions")));
        List<DecisionLine> all = tiers.decisions(childId);
        if (all.isEmpty()) {
            sheet.add(Parts.soft(texts.say("decisions.none")));
        }
        all.reversed().forEach(line -> sheet.add(new Paragraph(texts.say(line.from() == line.to() ? "decisions.kept" : "decisions.moved",
                texts.day(line.asOf()), Parts.word(line.to()), Parts.word(line.from()), line.by())
                + (line.reason().isEmpty() ? "" : " " + line.reason()))));
        return sheet;
    }
}
