package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import com.vaadin.flow.router.RouteParam;
import com.vaadin.flow.router.RouteParameters;
import com.vaadin.flow.router.RouterLink;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;

/** Children by name against skills: step, how sure, how old. Never ordered by step. */
@Route("class-map")
@Menu(order = 210, title = "tier.map")
@PermitAll
class ClassMapView extends Div implements HasDynamicTitle {
    private final Words texts = Words.of("tier");
    private final Div map = new Div();
    private String name = "";
    private String skills = "due";
    private String show = "everybody";
    private String order = "name";

    ClassMapView(RosterService roster, TierService tiers) {
        add(new H1(texts.say("map")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        ClassPicture picture = tiers.picture(ClassChoice.of(classes).classId());
        Div about = new Div(ClassChoice.line(classes), Parts.soft(picture.unitTitle()));
        about.addClassName("about");
        add(about);
        if (picture.children().isEmpty()) {
            add(ClassChoice.noChildren());
            return;
        }
        map.addClassName("scroll");
        map.getElement().setAttribute("tabindex", "0").setAttribute("role", "region")
                .setAttribute("aria-label", texts.say("map.region"));
        add(filters(picture), legend(), map);
        draw(picture);
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("map"));
    }

    private Component filters(ClassPicture picture) {
        Div filters = new Div(
                Parts.input(texts.say("map.name"), "search", "", text -> {
                    name = text;
                    draw(picture);
                }),
                choice(picture, texts.say("map.skills"), "map.skills.", List.of("due", "all"), key -> skills = key),
                choice(picture, texts.say("map.show"), "map.show.", List.of("everybody", "old", "open", "below"),
                        key -> show = key),
                choice(picture, texts.say("map.order"), "map.order.", List.of("name", "seen"), key -> order = key));
        filters.addClassName("filters");
        return filters;
    }

    private Component choice(ClassPicture picture, String label, String family, List<String> keys,
            Consumer<String> chosen) {
        Map<String, String> options = new LinkedHashMap<>();
        keys.forEach(key -> options.put(key, texts.say(family + key)));
        return Parts.choice(label, options, keys.getFirst(), key -> {
            chosen.accept(key);
            draw(picture);
        });
    }

    private Component legend() {
        UnorderedList legend = new UnorderedList();
        for (String line : List.of("map.stair", "map.sure", "map.age", "map.cell")) {
            legend.add(new ListItem(texts.say(line)));
        }
        legend.addClassNames("soft", "small", "legend");
        return new NativeDetails(texts.say("map.legend"), legend);
    }

    private void draw(ClassPicture picture) {
        map.removeAll();
        SortedSet<String> columns = new TreeSet<>(picture.due().keySet());
        if (!skills.equals("due") || columns.isEmpty()) {
            picture.children().forEach(c -> columns.addAll(c.picture().skills().keySet()));
        }
        String start = name.strip().toLowerCase(Locale.ROOT);
        List<OneChild> named = picture.children().stream()
                .filter(c -> c.row().label().toLowerCase(Locale.ROOT).startsWith(start)).toList();
        List<OneChild> shown = named.stream().filter(c -> shown(picture, c, columns)).sorted(ordered(columns)).toList();
        if (shown.isEmpty()) {
            map.add(Parts.soft(texts.say(named.isEmpty() ? "map.nobody-by-name" : "map.nobody")));
            return;
        }
        NativeTableBody body = new NativeTableBody();
        shown.forEach(child -> body.add(line(picture, child, columns)));
        NativeTable table = new NativeTable(header(picture, columns), body);
        table.addClassName("map");
        map.add(table);
        if (shown.size() < picture.children().size()) {
            map.add(Parts.soft(texts.say("map.count", shown.size(), picture.children().size())));
        }
    }

    private boolean shown(ClassPicture picture, OneChild child, SortedSet<String> columns) {
        return show.equals("everybody") || columns.stream().anyMatch(skill -> {
            SkillEstimate estimate = child.picture().skills().get(skill);
            boolean seen = estimate != null && estimate.seen();
            return switch (show) {
                case "old" -> !seen || estimate.stale();
                case "open" -> seen && !Certainty.of(estimate).equals(Certainty.CLEAR);
                default -> seen && picture.due().containsKey(skill) && estimate.step() < picture.due().get(skill);
            };
        });
    }

    private Comparator<OneChild> ordered(SortedSet<String> columns) {
        Comparator<OneChild> byName = Comparator.comparing(c -> c.row().label());
        return order.equals("name") ? byName : Comparator.<OneChild, LocalDate>comparing(c -> columns.stream()
                .map(skill -> c.picture().skills().get(skill)).filter(e -> e != null && e.lastSeen() != null)
                .map(SkillEstimate::lastSeen).max(Comparator.naturalOrder()).orElse(LocalDate.MIN))
                .thenComparing(byName);
    }

    private Component header(ClassPicture picture, SortedSet<String> columns) {
        NativeTableRow row = new NativeTableRow(headerCell(new Span(texts.say("map.child"))));
        for (String skill : columns) {
            NativeTableHeaderCell cell = headerCell(new Span(skill),
                    new Span(picture.progression().titles().getOrDefault(skill, "")));
            Integer expected = picture.due().get(skill);
            if (expected != null) {
                cell.add(new Span(texts.say("map.expected", expected)));
            }
            row.add(cell);
        }
        return new NativeTableHeader(row);
    }

    private static NativeTableHeaderCell headerCell(Component... lines) {
        NativeTableHeaderCell cell = new NativeTableHeaderCell(lines);
        cell.getElement().setAttribute("scope", "col");
        return cell;
    }

    private NativeTableRow line(ClassPicture picture, OneChild child, SortedSet<String> columns) {
        NativeTableHeaderCell name = new NativeTableHeaderCell();
        name.getElement().setAttribute("scope", "row");
        name.add(new RouterLink(child.row().label(), ChildView.class, parameters(child)));
        NativeTableRow row = new NativeTableRow(name);
        for (String skill : columns) {
            SkillEstimate estimate = child.picture().skills().get(skill);
            row.add(new NativeTableCell(estimate == null || !estimate.seen() ? unseen()
                    : cell(picture, child, estimate)));
        }
        return row;
    }

    private static RouteParameters parameters(OneChild child, RouteParam... more) {
        List<RouteParam> all = new ArrayList<>(List.of(more));
        all.add(new RouteParam("child", child.row().childId().toString()));
        return new RouteParameters(all.toArray(RouteParam[]::new));
    }

    private Component unseen() {
        Span none = new Span(texts.say("map.unseen"));
        none.addClassName("none");
        return none;
    }

    private Component cell(ClassPicture picture, OneChild child, SkillEstimate estimate) {
        String sure = texts.say("map.sure." + Certainty.of(estimate).word());
        LocalDate seen = estimate.lastSeen();
        long days = seen == null ? 0 : ChronoUnit.DAYS.between(seen, picture.day());
        Span age = new Span(sure + " · " + texts.say(seen == null ? "map.age.helped"
                : estimate.stale() ? "map.age.old" : "map.age.fresh", days));
        NativeButton button = new NativeButton();
        button.add(Parts.stair(estimate.step()), age);
        button.getElement().setAttribute("aria-label", texts.say(
                seen == null ? "map.cell.words.helped" : estimate.stale() ? "map.cell.words.old" : "map.cell.words",
                child.row().label(), estimate.skill(), estimate.step(), sure, days, estimate.looks()));
        button.addClickListener(event -> getUI().ifPresent(ui -> ui.navigate(ChildView.class,
                parameters(child, new RouteParam("skill", estimate.skill())))));
        return button;
    }
}
