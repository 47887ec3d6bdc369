package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouteParam;
import com.vaadin.flow.router.RouteParameters;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.platform.ui.Parts;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;

/** Children by name against skills: step, how sure, how old. Never ordered by step. */
@Route("class-map")
@PageTitle("Class map · Stepwell")
@Menu(order = 2, title = "Class map")
@PermitAll
class ClassMapView extends Div {
    private final Div map = new Div();
    private String name = "";
    private String skills = "due";

    ClassMapView(RosterService roster, TierService tiers) {
        add(new H1("Class map"));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(Parts.soft("No class is shared with you yet."));
            return;
        }
        ClassPicture picture = tiers.picture(ClassChoice.of(classes).classId());
        add(ClassChoice.line(classes));
        if (!picture.unitTitle().isEmpty()) {
            add(Parts.soft(picture.unitTitle()));
        }
        Map<String, String> which = new LinkedHashMap<>();
        which.put("due", "Skills due now");
        which.put("all", "All skills seen or paced");
        Div filters = new Div(
                Parts.input("Name begins with", "search", "", text -> {
                    name = text;
                    draw(picture);
                }),
                Parts.choice("Skills", which, skills, key -> {
                    skills = key;
                    draw(picture);
                }));
        filters.addClassName("row");
        map.addClassName("scroll");
        map.getElement().setAttribute("tabindex", "0").setAttribute("role", "region")
                .setAttribute("aria-label", "Children and skills");
        add(filters, legend(), map);
        draw(picture);
    }

    private static Component legend() {
        Paragraph legend = new Paragraph("A stair shows the step the looks fit best, 1 to 5, with the number beside it. "
                + "\"Clear\" is said when at least 8 of 10 cases like this are at that step or above, else \"likely\" or "
                + "\"open\". \"Old\" means: not seen for so long that a fresh look comes first. "
                + "An empty cell was never seen. Press a cell to read the looks behind it.");
        legend.addClassNames("soft", "small");
        return legend;
    }

    private void draw(ClassPicture picture) {
        map.removeAll();
        SortedSet<String> columns = new TreeSet<>(picture.due().keySet());
        if (!skills.equals("due") || columns.isEmpty()) {
            picture.children().forEach(c -> columns.addAll(c.picture().skills().keySet()));
        }
        NativeTable table = new NativeTable();
        table.addClassName("map");
        table.add(header(picture, columns));
        NativeTableBody body = new NativeTableBody();
        picture.children().stream()
                .filter(c -> c.row().label().toLowerCase(Locale.ROOT).startsWith(name.strip().toLowerCase(Locale.ROOT)))
                .forEach(child -> body.add(line(picture, child, columns)));
        table.add(body);
        map.add(body.getElement().getChildCount() == 0 ? Parts.soft("Nobody's name begins like that.") : table);
    }

    private static Component header(ClassPicture picture, SortedSet<String> columns) {
        NativeTableRow row = new NativeTableRow(headerCell("Child", "col"));
        for (String skill : columns) {
            String title = picture.progression().titles().getOrDefault(skill, "");
            Integer expected = picture.due().get(skill);
            row.add(headerCell(skill + " " + title + (expected == null ? "" : " (expected " + expected + ")"), "col"));
        }
        return new NativeTableHeader(row);
    }

    private static NativeTableHeaderCell headerCell(String text, String scope) {
        NativeTableHeaderCell cell = new NativeTableHeaderCell(text);
        cell.getElement().setAttribute("scope", scope);
        return cell;
    }

    private NativeTableRow line(ClassPicture picture, OneChild child, SortedSet<String> columns) {
        NativeTableHeaderCell name = new NativeTableHeaderCell();
        name.getElement().setAttribute("scope", "row");
        name.add(new RouterLink(child.row().label(), ChildView.class,
                new RouteParameters(new RouteParam("child", child.row().childId().toString()))));
        NativeTableRow row = new NativeTableRow(name);
        for (String skill : columns) {
            SkillEstimate estimate = child.picture().skills().get(skill);
            row.add(new NativeTableCell(estimate == null || !estimate.seen() ? unseen()
                    : cell(picture, child, estimate)));
        }
        return row;
    }

    private static Component unseen() {
        Span none = new Span("not seen");
        none.addClassName("none");
        return none;
    }

    private Component cell(ClassPicture picture, OneChild child, SkillEstimate estimate) {
        long days = ChronoUnit.DAYS.between(estimate.lastSeen(), picture.day());
        String age = (estimate.stale() ? "old, " : "") + (days == 0 ? "today" : days + " d");
        NativeButton button = new NativeButton();
        button.add(Parts.stair(estimate.step()), new Span(sure(estimate)), new Span(age));
        button.getElement().setAttribute("aria-label", child.row().label() + ", " + estimate.skill() + ": step "
                + estimate.step() + ", " + sure(estimate) + ", last seen " + age + ", " + estimate.looks() + " looks");
        button.addClickListener(event -> getUI().ifPresent(ui -> ui.navigate(ChildView.class,
                new RouteParameters(new RouteParam("child", child.row().childId().toString()),
                        new RouteParam("skill", estimate.skill())))));
        return button;
    }

    private static String sure(SkillEstimate estimate) {
        double chance = estimate.atLeast(estimate.step());
        boolean above = estimate.step() < 5 && estimate.atLeast(estimate.step() + 1) > 0.35;
        if (chance >= 0.8 && !above) {
            return "clear";
        }
        return chance >= 0.65 ? "likely" : "open";
    }
}
