package org.stepwell.plan.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.plan.PlannedSessions.Outcome;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.tier.ChildState.Dose;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.plan.AfterHelpService;
import org.stepwell.plan.Plan;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTemplateService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.privacy.ui.ChildPage;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** The plan of one child: terms, sessions in two taps, dose, changes as phases, and its end. */
@Route("plan/:child")
@PermitAll
class PlanView extends Div implements BeforeEnterObserver, HasDynamicTitle {
    private static final double FEW_SESSIONS = 0.6;

    private final AccessRecordService record;
    private final RosterService roster;
    private final PlanService plans;
    private final AfterHelpService after;
    private final PlanTemplateService templates;
    private final PacingService pacing;
    private final ProgressionService progressions;
    private final CurrentAdult current;
    private final Words texts = Words.of("plan");
    private final Div message = new Div();
    private UUID childId = new UUID(0, 0);

    PlanView(RosterService roster, PlanService plans, AfterHelpService after,
            PlanTemplateService templates, PacingService pacing, ProgressionService progressions,
            CurrentAdult current, AccessRecordService record) {
        this.record = record;
        this.roster = roster;
        this.plans = plans;
        this.after = after;
        this.templates = templates;
        this.pacing = pacing;
        this.progressions = progressions;
        this.current = current;
    }

    /** No name: titles stay behind in tabs and histories that others see. */
    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        ChildPage.enter(event, record, Seen.PLAN_PAGE, id -> {
            childId = id;
            draw();
        });
    }

    private void draw() {
        removeAll();
        message.removeAll();
        ChildRow child = roster.child(childId);
        LocalDate today = current.today();
        boolean writes = plans.mayWrite(childId);
        H1 heading = new H1(texts.say("title") + ": ");
        heading.add(new Anchor("child/" + childId, child.label()));
        add(heading, message);
        List<Plan> all = plans.plans(childId);
        Optional<Plan> running = all.stream().filter(plan -> plan.endedOn() == null).reduce((a, b) -> b);
        if (running.isPresent()) {
            running(child, running.get(), today, writes);
        } else {
            add(new Paragraph(texts.say("none")));
            if (writes) {
                begin(child, today);
            }
        }
        if (!writes) {
            add(Parts.soft(texts.say("not-yours")));
        }
        earlier(all.stream().filter(plan -> plan.endedOn() != null).toList(), writes && running.isEmpty());
    }

    private Map<String, String> skills(ChildRow child) {
        Map<String, String> skills = new LinkedHashMap<>();
        progressions.ofClass(child.classId()).skills().forEach(s -> skills.put(s.code(), s.code() + " " + s.title()));
        return skills;
    }

    private String dueSkill(ChildRow child, LocalDate today, Map<String, String> skills) {
        return pacing.unit(child.classId()).map(UnitInHand::pacing).map(p -> p.dueOn(today).keySet())
                .flatMap(due -> due.stream().findFirst())
                .orElseGet(() -> skills.keySet().stream().findFirst().orElse(""));
    }

    private void begin(ChildRow child, LocalDate today) {
        Map<String, String> skills = skills(child);
        add(new BeginPanel(templates.templates(), skills, dueSkill(child, today, skills), current.get().name(), today,
                (support, terms) -> act(() -> plans.start(childId, support, terms.get()))),
                new TemplatesPanel(templates, this::act).list());
    }

    private void running(ChildRow child, Plan plan, LocalDate today, boolean writes) {
        PlanTerms now = plan.on(today);
        Div sheet = Parts.sheet(new H2(texts.say(plan.support() ? "support" : "extension")),
                new Paragraph(texts.say("running", now.skill(), texts.day(plan.startedOn()), now.givenBy(),
                        now.perWeek(), now.minutes())),
                new Paragraph(texts.say("goal", now.step(), now.skill(), now.share(), texts.day(now.by()), now.start())),
                Parts.soft(texts.say("review-on", texts.day(now.reviewOn()))));
        SchoolCalendar calendar = pacing.unit(child.classId()).map(UnitInHand::calendar)
                .orElseGet(() -> new SchoolCalendar(List.of()));
        Dose dose = plan.dose(calendar, today);
        sheet.add(new Paragraph(dose == null ? texts.say("dose.none") : texts.say("dose", dose.given(), dose.planned(),
                dose.missedBySchool(), dose.missedByChild())));
        if (dose != null && dose.share() < FEW_SESSIONS) {
            sheet.add(caution("dose.low"));
        }
        if (plan.missedTwiceRunning()) {
            sheet.add(caution("twice"));
        }
        sheet.add(new FadingPanel(plan, after.standing(childId, plan), today,
                writes ? terms -> act(() -> plans.change(childId, plan.planId(), terms)) : null));
        if (plan.support()) {
            sheet.add(Parts.link("letter/" + childId + "/" + Words.language().code(), texts.say("letter")));
        }
        add(sheet, log(plan, now, today), sessions(plan));
        if (writes) {
            TermsForm form = new TermsForm(new PlanTerms(today, now.skill(), now.start(), now.step(), now.share(),
                    now.by().isAfter(today) ? now.by() : today.plusWeeks(8), now.givenBy(), now.perWeek(),
                    now.minutes(), today.plusWeeks(4), now.activity()), skills(child), true);
            add(new NativeDetails(texts.say("change"), new Div(Parts.soft(texts.say("change.help")), form,
                    Parts.button(texts.say("change.do"),
                            () -> act(() -> plans.change(childId, plan.planId(), form.terms()))))),
                    new TemplatesPanel(templates, this::act).keep(childId, plan.planId()),
                    new TemplatesPanel(templates, this::act).list(), end(plan, today));
        }
        Div phases = new Div();
        plan.phases().forEach(phase -> phases.add(new Paragraph(texts.say("phase", texts.day(phase.from()),
                phase.skill(), phase.step(), phase.perWeek(), phase.minutes(), phase.givenBy(), phase.activity()))));
        add(new NativeDetails(texts.say("phases"), phases));
    }

    private Paragraph caution(String name) {
        Paragraph text = new Paragraph(texts.say(name));
        text.addClassName("caution");
        return text;
    }

    private Div log(Plan plan, PlanTerms now, LocalDate today) {
        NativeButton given = Parts.button(texts.say("log.given"), () -> act(() -> plans.log(childId, plan.planId(),
                UUID.randomUUID(), today, Outcome.GIVEN, now.minutes(), "")));
        given.addClassName("strong");
        Div reasons = new Div();
        reasons.addClassName("actions");
        for (Outcome why : Outcome.values()) {
            if (why != Outcome.GIVEN) {
                reasons.add(Parts.button(texts.say("outcome." + why.code()), () -> act(() -> plans.log(childId,
                        plan.planId(), UUID.randomUUID(), today, why, 0, ""))));
            }
        }
        Map<String, String> outcomes = new LinkedHashMap<>();
        for (Outcome outcome : Outcome.values()) {
            outcomes.put(outcome.code(), texts.say("outcome." + outcome.code()));
        }
        String[] day = {today.toString()};
        String[] outcome = {Outcome.GIVEN.code()};
        String[] minutes = {String.valueOf(now.minutes())};
        String[] words = {""};
        Div other = new Div(Parts.input(texts.say("log.day"), "date", day[0], text -> day[0] = text),
                Parts.choice(texts.say("end.how"), outcomes, outcome[0], key -> outcome[0] = key),
                Parts.input(texts.say("minutes"), "number", minutes[0], text -> minutes[0] = text),
                Parts.input(texts.say("log.words"), "text", "", text -> words[0] = text),
                Parts.button(texts.say("log.do"), () -> act(() -> plans.log(childId, plan.planId(), UUID.randomUUID(),
                        LocalDate.parse(day[0]), Outcome.of(outcome[0]), Integer.parseInt(minutes[0].strip()),
                        words[0]))));
        other.addClassName("row");
        Div row = new Div(given);
        row.addClassName("actions");
        return Parts.sheet(new H2(texts.say("log")), row, new NativeDetails(texts.say("log.missed"), reasons),
                new NativeDetails(texts.say("log.other"), other));
    }

    private NativeDetails sessions(Plan plan) {
        UnorderedList list = new UnorderedList();
        list.addClassName("looks");
        plan.sessions().reversed().forEach(held -> {
            NativeButton back = Parts.button(texts.say("take-back"),
                    () -> act(() -> plans.takeBack(childId, plan.planId(), held.sessionId())));
            back.getElement().setAttribute("aria-label", texts.say("take-back") + ": " + texts.day(held.on()));
            list.add(new ListItem(new Span(texts.say("session", texts.day(held.on()),
                    texts.say("outcome." + held.outcome().code()), held.outcome() == Outcome.GIVEN
                            ? texts.say("session.minutes", held.minutes()) : "", held.words()) + " "), new Span(held.by()),
                    back));
        });
        return new NativeDetails(texts.say("sessions") + " (" + plan.sessions().size() + ")", list);
    }

    private NativeDetails end(Plan plan, LocalDate today) {
        Map<String, String> hows = new LinkedHashMap<>();
        PlanService.OUTCOMES.forEach(how -> hows.put(how, texts.say("ended." + how)));
        String[] how = {PlanService.OUTCOMES.getFirst()};
        String[] words = {""};
        Div fields = new Div(Parts.choice(texts.say("end.how"), hows, how[0], key -> how[0] = key),
                Parts.input(texts.say("end.words"), "text", "", text -> words[0] = text),
                Parts.button(texts.say("end.do"),
                        () -> act(() -> plans.end(childId, plan.planId(), today, how[0], words[0]))));
        fields.addClassName("row");
        return new NativeDetails(texts.say("end"), new Div(Parts.soft(texts.say("more-help")), fields));
    }

    private void earlier(List<Plan> ended, boolean mayBegin) {
        if (!ended.isEmpty()) {
            LocalDate today = current.today();
            add(new EarlierPlans(ended, after.ended(childId), mayBegin ? plan -> act(() -> {
                PlanTerms first = plan.phases().getFirst();
                PlanTerms last = plan.phases().getLast();
                plans.start(childId, true, new PlanTerms(today, last.skill(), last.start(), last.step(), last.share(),
                        today.plusWeeks(8), last.givenBy(), first.perWeek(), first.minutes(), today.plusWeeks(4),
                        last.activity()));
            }) : null));
        }
    }

    private void act(Runnable change) {
        act(change, "");
    }

    private void act(Runnable change, String done) {
        try {
            change.run();
            draw();
            if (!done.isEmpty()) {
                Parts.say(message, done);
            }
        } catch (PlanService.Refused refused) {
            Parts.say(message, texts.say("wrong", refused.fields().stream().map(this::field)
                    .collect(Collectors.joining(", "))));
        } catch (Refused refused) {
            Parts.say(message, Words.told(refused));
        } catch (NotVisible closed) {
            Parts.say(message, texts.say("not-yours"));
        } catch (java.time.format.DateTimeParseException | NumberFormatException noValue) {
            Parts.say(message, texts.say("wrong", texts.say("wrong.day") + ", " + texts.say("minutes")));
        }
    }

    private String field(String name) {
        return switch (name) {
            case "day", "running", "ended" -> texts.say("wrong." + name);
            default -> texts.say(name);
        };
    }
}
