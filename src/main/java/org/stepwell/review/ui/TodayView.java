package org.stepwell.review.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.stepwell.core.tier.Verdict;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.LessonService;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.plan.PlanService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;
import org.stepwell.tier.ui.TodaySection;

/** The lesson in hand, who comes first at the table, what waits for a decision; for a new class, how to begin. */
@Route("")
@Menu(order = 0, title = "today.title")
@PermitAll
class TodayView extends Div implements HasDynamicTitle {
    private static final int FIRST_AT_THE_TABLE = 5;
    private static final int SHOWN_AT_ONCE = 8;
    private static final String FILES = "files";

    private final Words texts = Words.of("today");

    TodayView(RosterService roster, TierService tiers, PacingService pacing, LessonService lessons,
            ObservationService observations, PlanService plans, List<TodaySection> sections) {
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(new H1(texts.say("title")), ClassChoice.none());
            return;
        }
        ClassPicture picture = tiers.picture(ClassChoice.of(classes).classId());
        Optional<UnitInHand> unit = pacing.unit(ClassChoice.of(classes).classId());
        Div head = new Div(new Div(new H1(texts.weekday(picture.day())), ClassChoice.line(classes)));
        head.addClassName("head");
        add(head);
        Div cards = new Div();
        cards.addClassName("cards");
        if (picture.children().isEmpty() || unit.isEmpty() || unit.get().pacing().rows().isEmpty()) {
            cards.add(begin(picture, unit));
        }
        if (!picture.children().isEmpty()) {
            Anchor table = Parts.outside("/table/", texts.say("to-table"));
            table.addClassNames("strong", "big");
            head.add(table);
            unit.ifPresent(u -> cards.add(new LessonCard(texts, picture, u,
                    lessons.inHand(ClassChoice.of(classes).classId()).orElse(null))));
            cards.add(unseen(picture));
            unit.ifPresent(u -> cards.add(waiting(picture)));
        }
        List<OneChild> missed = missed(plans, picture);
        if (!missed.isEmpty()) {
            cards.add(missed(missed));
        }
        sections.forEach(section -> section.of(picture).ifPresent(cards::add));
        int late = observations.undecided().size();
        if (late > 0) {
            cards.add(late(late));
        }
        add(cards);
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    /** What a new class still needs, in order; the first open one is the next thing to do. */
    private Component begin(ClassPicture picture, Optional<UnitInHand> unit) {
        boolean children = !picture.children().isEmpty();
        boolean paced = unit.isPresent() && !unit.get().pacing().rows().isEmpty();
        Div sheet = Parts.sheet(new H2(texts.say("begin")));
        UnorderedList steps = new UnorderedList(
                new ListItem(texts.say(children ? "begin.children.done" : "begin.children", picture.children().size())),
                new ListItem(texts.say(unit.isPresent() ? "begin.unit.done" : "begin.unit")),
                new ListItem(texts.say(paced ? "begin.pacing.done" : "begin.pacing")));
        sheet.add(steps, Parts.link(FILES, texts.say(children ? unit.isPresent() ? "begin.next.pacing" : "begin.next.unit"
                : "begin.next.children")));
        return sheet;
    }

    private Component unseen(ClassPicture picture) {
        Seen seen = Seen.in(picture);
        Div sheet = Parts.sheet(new H2(texts.say("seen")));
        List<OneChild> least = seen.least(FIRST_AT_THE_TABLE);
        if (!least.isEmpty()) {
            sheet.add(new Paragraph(texts.say("seen.least", Seen.WEEKS)));
            UnorderedList list = new UnorderedList();
            list.addClassName("chips");
            least.forEach(child -> list.add(new ListItem(chip("child/", child,
                    texts.say("seen.count", child.row().label(), seen.looks(child))))));
            sheet.add(list);
        }
        if (seen.notThisWeek().isEmpty()) {
            sheet.add(new Paragraph(texts.say("seen.all")));
        } else if (seen.notThisWeek().size() == picture.children().size()) {
            sheet.add(new Paragraph(texts.say("seen.nobody", picture.children().size())));
        } else {
            String not = texts.say("seen.not", seen.notThisWeek().size());
            if (seen.notThisWeek().size() > SHOWN_AT_ONCE) {
                sheet.add(new NativeDetails(not, names(seen.notThisWeek())));
            } else {
                sheet.add(new Paragraph(not), names(seen.notThisWeek()));
            }
        }
        return sheet;
    }

    private static Component names(List<OneChild> children) {
        UnorderedList list = new UnorderedList();
        list.addClassName("chips");
        children.forEach(child -> list.add(new ListItem(chip("child/", child, child.row().label()))));
        return list;
    }

    private static Component chip(String screen, OneChild child, String words) {
        Anchor anchor = new Anchor(screen + child.row().childId(), words);
        anchor.addClassName("chip");
        return anchor;
    }

    private Component waiting(ClassPicture picture) {
        long moves = picture.children().stream().filter(c -> !c.decided(picture.day()))
                .filter(c -> says(picture, c) == Verdict.MOVE).count();
        long decided = picture.children().stream().filter(c -> c.decided(picture.day())).count();
        long few = picture.children().stream().filter(c -> says(picture, c) == Verdict.NOT_ENOUGH).count();
        Div sheet = Parts.sheet(new H2(texts.say("waiting")));
        Paragraph lead = new Paragraph(texts.say("waiting.moves", moves));
        lead.addClassName("lead");
        sheet.add(lead);
        if (decided > 0) {
            sheet.add(new Paragraph(texts.say("waiting.decided", decided)));
        }
        if (few > 0) {
            sheet.add(new Paragraph(texts.say("waiting.few", few)));
        }
        sheet.add(Parts.link("suggestions", texts.say("waiting.read")));
        return sheet;
    }

    private static List<OneChild> missed(PlanService plans, ClassPicture picture) {
        List<UUID> twice = plans.missedTwice(picture.children().stream().map(c -> c.row().childId()).toList());
        return picture.children().stream().filter(c -> twice.contains(c.row().childId())).toList();
    }

    /** Help that was planned and did not happen twice running is nobody's evidence; somebody has to find the time. */
    private Component missed(List<OneChild> children) {
        UnorderedList list = new UnorderedList();
        list.addClassName("chips");
        children.forEach(child -> {
            list.add(new ListItem(chip("plan/", child, child.row().label())));
        });
        return Parts.sheet(new H2(texts.say("missed")), new Paragraph(texts.say("missed.twice")), list);
    }

    /** Looks of an adult who had lost the class when they arrived: they count only when somebody of the class says so. */
    private Component late(int count) {
        return Parts.sheet(new H2(texts.say("late")), new Paragraph(texts.say("late.count", count)),
                Parts.link("tablets", texts.say("late.decide")));
    }

    private static Verdict says(ClassPicture picture, OneChild child) {
        return picture.review().of(child.row().schoolKey()).map(s -> s.verdict()).orElse(Verdict.STAY);
    }
}
