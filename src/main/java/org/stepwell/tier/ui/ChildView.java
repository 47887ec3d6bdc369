package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.DayStep;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.trend.TrendGoal;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.plan.PlanService;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.privacy.ui.AccessPanel;
import org.stepwell.privacy.ui.ChildPage;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.DecisionLine;
import org.stepwell.tier.TierService;
import org.stepwell.trend.ChildHistory;
import org.stepwell.trend.TrendChart;
import org.stepwell.trend.ui.TrendPanel;

/** One child: the support that runs and why, a trend, every look with its history. */
@Route("child/:child/:skill?")
@PermitAll
class ChildView extends Div implements BeforeEnterObserver, HasDynamicTitle {
    private final AccessRecordService record;
    private final RosterService roster;
    private final TierService tiers;
    private final ObservationService observations;
    private final PacingService pacing;
    private final PlanService plans;
    private final List<ChildSection> sections;
    private final Words texts = Words.of("tier");
    private @Nullable UUID childId;
    private String skill = "";

    ChildView(RosterService roster, TierService tiers, ObservationService observations, PacingService pacing,
            PlanService plans, AccessRecordService record, List<ChildSection> sections) {
        this.sections = sections;
        this.record = record;
        this.roster = roster;
        this.tiers = tiers;
        this.observations = observations;
        this.pacing = pacing;
        this.plans = plans;
    }

    /** No name: titles stay behind in tabs and histories that others see. */
    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("child"));
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        skill = event.getRouteParameters().get("skill").orElse("");
        ChildPage.enter(event, record, Seen.CHILD_PAGE, id -> {
            childId = id;
            draw();
        });
    }

    private void draw() {
        removeAll();
        ChildRow child = roster.child(childId);
        ClassPicture picture = tiers.picture(child.classId());
        OneChild one = picture.children().stream().filter(c -> c.row().childId().equals(childId)).findFirst()
                .orElseThrow(NotVisible::new);
        add(new H1(child.label()));
        add(tier(picture, one), trend(picture, one));
        add(new LooksPanel(child, picture, observations, roster.adults(), this::draw));
        add(decisions());
        sections.forEach(section -> section.on(child).ifPresent(this::add));
        add(new AccessPanel(record, childId, child.schoolKey()));
    }

    private Component tier(ClassPicture picture, OneChild one) {
        SuggestionWording words = new SuggestionWording(Words.language(), picture.progression());
        Div sheet = Parts.sheet(new H2(texts.say("child.tier")), Parts.tier(one.state().tier()));
        List<DecisionLine> decided = tiers.decisions(childId);
        if (!decided.isEmpty()) {
            sheet.add(Parts.soft(texts.say("decisions.last", words(decided.getLast()))));
        }
        picture.review().of(one.row().schoolKey()).ifPresent(suggestion -> {
            sheet.add(new Paragraph(words.reason(suggestion)));
            suggestion.cautions().stream().limit(ReasonsPanel.ON_THE_CARD).forEach(caution -> {
                Paragraph text = new Paragraph(words.caution(caution));
                text.addClassName("caution");
                sheet.add(text);
            });
            sheet.add(ReasonsPanel.folded(suggestion,
                    () -> tiers.details(one.row().classId(), one.row().childId()), words));
        });
        if (plans.mayRead(childId)) {
            sheet.add(Parts.link("plan/" + childId, texts.say("child.plan")));
        }
        return sheet;
    }

    private Component trend(ClassPicture picture, OneChild one) {
        Div sheet = Parts.sheet(new H2(texts.say("child.trend")));
        ChildHistory history = history(picture, one);
        if (history.days().isEmpty()) {
            sheet.add(Parts.soft(texts.say("child.unseen")));
            return sheet;
        }
        sheet.add(new TrendPanel(history, skill));
        return sheet;
    }

    /** The goal of the plan that runs, drawn beside the skill it is about. */
    private List<TrendGoal> goals(LocalDate today) {
        return !plans.mayRead(childId) ? List.of() : plans.running(childId).map(plan -> plan.on(today)).map(terms -> List.of(new TrendGoal(terms.skill(),
                terms.from(), terms.start(), terms.by(), terms.step()))).orElseGet(List::of);
    }

    private ChildHistory history(ClassPicture picture, OneChild one) {
        EffectiveLooks effective = EffectiveLooks.of(picture.looks(), picture.progression(), picture.day());
        SortedMap<String, String> titles = new TreeMap<>();
        SortedMap<String, List<DayStep>> days = new TreeMap<>();
        for (SkillEstimate skillSeen : one.picture().skills().values()) {
            String code = skillSeen.skill();
            List<DayStep> own = effective.days(one.row().schoolKey(), code);
            if (!own.isEmpty()) {
                titles.put(code, (code + " " + picture.progression().titles().getOrDefault(code, "")).strip());
                days.put(code, own);
            }
        }
        Optional<UnitInHand> unit = pacing.unit(one.row().classId());
        Pacing plan = unit.map(UnitInHand::pacing).orElseGet(() -> new Pacing(List.of()));
        SchoolCalendar calendar = unit.map(UnitInHand::calendar).orElseGet(() -> new SchoolCalendar(List.of()));
        List<LocalDate> seen = picture.looks().stream().map(Look::day).toList();
        List<TrendChart.Phase> phases = tiers.decisions(childId).stream().filter(d -> d.from() != d.to())
                .map(d -> new TrendChart.Phase(d.asOf(), Parts.word(d.to()))).toList();
        return new ChildHistory(titles, days, plan,
                new ClassSetting(picture.progression(), plan, calendar).calendarOn(picture.day(), seen),
                picture.day(), phases, goals(picture.day()));
    }

    private Component decisions() {
        Div sheet = Parts.sheet(new H2(texts.say("decisions")));
        List<DecisionLine> all = tiers.decisions(childId);
        if (all.isEmpty()) {
            sheet.add(Parts.soft(texts.say("decisions.none")));
        }
        all.reversed().forEach(line -> sheet.add(new Paragraph(words(line))));
        return sheet;
    }

    private String words(DecisionLine line) {
        return texts.say(line.from() == line.to() ? "decisions.kept" : "decisions.moved", texts.day(line.asOf()),
                Parts.word(line.to()), Parts.word(line.from()), line.by())
                + (line.reason().isEmpty() ? "" : " " + line.reason());
    }
}
