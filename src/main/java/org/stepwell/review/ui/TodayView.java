package org.stepwell.review.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.tier.Verdict;
import org.stepwell.platform.ui.Parts;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.TierService;

/** What is in hand today, who was not seen this week, what waits for a decision. */
@Route("")
@PageTitle("Today · Stepwell")
@Menu(order = 0, title = "Today")
@PermitAll
class TodayView extends Div {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE, MMMM d", Locale.ENGLISH);

    TodayView(RosterService roster, TierService tiers) {
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(new H1("Today"), Parts.soft("No class is shared with you yet."));
            return;
        }
        ClassPicture picture = tiers.picture(ClassChoice.of(classes).classId());
        add(new H1(DAY.format(picture.day())), ClassChoice.line(classes));
        Anchor table = new Anchor("/table/", "To the Table");
        table.setRouterIgnore(true);
        table.addClassNames("button", "strong");
        add(table);
        Div cards = new Div(lesson(picture), unseen(picture), waiting(picture));
        cards.addClassName("cards");
        cards.getStyle().set("margin-top", "1rem");
        add(cards);
    }

    private static Div lesson(ClassPicture picture) {
        Div sheet = Parts.sheet(new H2("In hand"));
        if (picture.unitTitle().isEmpty()) {
            sheet.add(Parts.soft("No unit yet. Start one under People and files."));
            return sheet;
        }
        sheet.add(new Paragraph(picture.unitTitle()));
        picture.due().forEach((skill, step) -> sheet.add(new Paragraph(skill + " "
                + picture.progression().titles().getOrDefault(skill, "") + ": step " + step + " expected")));
        if (picture.due().isEmpty()) {
            sheet.add(Parts.soft("No skill is due yet."));
        }
        return sheet;
    }

    private static Div unseen(ClassPicture picture) {
        LocalDate monday = picture.day().with(DayOfWeek.MONDAY);
        Set<String> seen = picture.looks().stream().filter(l -> !l.withdrawn() && l.step() != null
                && !l.day().isBefore(monday)).map(Look::child).collect(Collectors.toSet());
        List<String> names = picture.children().stream().filter(c -> !seen.contains(c.row().schoolKey()))
                .map(c -> c.row().label()).toList();
        Div sheet = Parts.sheet(new H2("Not seen this week"));
        if (names.isEmpty()) {
            sheet.add(new Paragraph("Everybody was seen."));
        } else if (names.size() == picture.children().size()) {
            sheet.add(new Paragraph("Nobody was seen yet: " + names.size() + " children."));
        } else {
            sheet.add(new Paragraph(String.join(", ", names)));
        }
        return sheet;
    }

    private static Div waiting(ClassPicture picture) {
        long moves = picture.review().suggestions().stream().filter(s -> s.verdict() == Verdict.MOVE).count();
        long few = picture.review().suggestions().stream().filter(s -> s.verdict() == Verdict.NOT_ENOUGH).count();
        Div sheet = Parts.sheet(new H2("Waiting for you"),
                new Paragraph(moves + (moves == 1 ? " move is" : " moves are") + " suggested."),
                new Paragraph("For " + few + (few == 1 ? " child" : " children") + " too little was seen to say."));
        Anchor all = new Anchor("suggestions", "Read the suggestions");
        all.addClassName("button");
        sheet.add(all);
        return sheet;
    }
}
