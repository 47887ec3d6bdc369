package org.stepwell.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.AskNow;
import org.stepwell.core.tier.ChildState;
import org.stepwell.core.tier.ClassReview;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Condition;
import org.stepwell.core.tier.Details;
import org.stepwell.core.tier.Reviewer;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Suggestion;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.Verdict;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.plan.PlanService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import tools.jackson.databind.json.JsonMapper;

/** Where a class stands, what the rules suggest, and what was decided. */
@Service
@Transactional
public class TierService {
    private static final SortedMap<String, Integer> NOTHING_DUE = new TreeMap<>();

    private final TierStore store;
    private final RosterService roster;
    private final ProgressionService progressions;
    private final PacingService pacing;
    private final ObservationService observations;
    private final PlanService plans;
    private final Access access;
    private final CurrentAdult current;
    private final JsonMapper json;
    private final Parameters parameters = Parameters.shipped();
    private final RuleFile rules = RuleFile.shipped(RuleFile.DEFAULT);

    TierService(TierStore store, RosterService roster, ProgressionService progressions, PacingService pacing,
            ObservationService observations, PlanService plans, Access access, CurrentAdult current, JsonMapper json) {
        this.store = store;
        this.roster = roster;
        this.progressions = progressions;
        this.pacing = pacing;
        this.observations = observations;
        this.plans = plans;
        this.access = access;
        this.current = current;
        this.json = json;
    }

    /** The class today, limited to the children this adult may see. */
    public ClassPicture picture(UUID classId) {
        LocalDate day = current.today();
        List<ChildRow> children = roster.children(classId);
        List<Look> looks = observations.ofClass(classId);
        Progression progression = progressions.ofClass(classId);
        Optional<UnitInHand> unit = pacing.unit(classId);
        ClassSetting setting = setting(progression, unit);
        Reviewer reviewer = new Reviewer(setting, looks, rules, parameters);
        List<ChildState> states = states(unit, children);
        List<ClassPicture.OneChild> all = new ArrayList<>();
        for (int i = 0; i < children.size(); i++) {
            ChildRow row = children.get(i);
            all.add(new ClassPicture.OneChild(row, reviewer.picture(row.schoolKey(), day), states.get(i)));
        }
        return new ClassPicture(day, unit.map(UnitInHand::title).orElse(""), progression,
                unit.map(u -> u.pacing().dueOn(day)).orElse(NOTHING_DUE), all,
                unit.isPresent() ? reviewer.review(states, day) : new ClassReview(day, List.of(), List.of()), looks);
    }

    /** What mattered most for one child's suggestion, and what would settle it. */
    public Details details(UUID classId, UUID childId) {
        ChildRow child = roster.child(childId);
        Optional<UnitInHand> unit = pacing.unit(classId);
        Reviewer reviewer = new Reviewer(setting(progressions.ofClass(classId), unit),
                observations.ofClass(classId), rules, parameters);
        return reviewer.details(states(unit, List.of(child)).getFirst(), current.today());
    }

    /** What to ask each child now that this adult may see, by the school's own id and skill. */
    @Transactional(readOnly = true)
    public Map<String, Map<String, AskNow>> askNow(UUID classId) {
        List<ChildRow> children = roster.children(classId);
        Reviewer reviewer = new Reviewer(setting(progressions.toBegin(classId), pacing.unit(classId)),
                observations.ofClass(classId), rules, parameters);
        LocalDate day = current.today();
        return children.stream().map(ChildRow::schoolKey)
                .collect(Collectors.toMap(child -> child, child -> reviewer.askNow(child, day)));
    }

    private static ClassSetting setting(Progression progression, Optional<UnitInHand> unit) {
        return new ClassSetting(progression, unit.map(UnitInHand::pacing).orElseGet(() -> new Pacing(List.of())),
                unit.map(UnitInHand::calendar).orElseGet(() -> new SchoolCalendar(List.of())));
    }

    private List<ChildState> states(Optional<UnitInHand> unit, List<ChildRow> children) {
        if (unit.isEmpty()) {
            return children.stream().map(c -> ChildState.start(c.schoolKey())).toList();
        }
        UUID unitId = unit.get().unitId();
        Map<UUID, List<DecisionLine>> decisions = store.decisions(unitId,
                children.stream().map(ChildRow::childId).toList());
        Map<UUID, ChildState.Dose> doses = plans.doses(children.stream().map(ChildRow::childId).toList(),
                unit.get().calendar());
        List<ChildState> states = new ArrayList<>();
        for (ChildRow child : children) {
            ChildState state = new ChildState(child.schoolKey(), Tier.ON_LEVEL, null, List.of(),
                    child.startsOn().isAfter(unit.get().startsOn()) ? child.startsOn() : null,
                    doses.getOrDefault(child.childId(), store.dose(unitId, child.childId())),
                    store.open(child.childId()));
            for (DecisionLine decision : decisions.getOrDefault(child.childId(), List.of())) {
                state = state.reviewed(decision.asOf(), decision.to());
            }
            states.add(state);
        }
        return states;
    }

    /** Decisions on a child in the unit in hand, oldest first. */
    public List<DecisionLine> decisions(UUID childId) {
        ChildRow child = roster.child(childId);
        return pacing.unit(child.classId())
                .map(unit -> store.decisions(unit.unitId(), List.of(childId)).getOrDefault(childId, List.of()))
                .orElse(List.of());
    }

    /**
     * A decision to store.
     *
     * @param tier the tier from now on
     * @param reason required when the tier is neither the one in force nor the one suggested
     */
    public record Decided(UUID childId, Tier tier, String reason) {}

    /**
     * Stores the teacher's decision with what it rested on.
     *
     * @param tier the tier from now on
     * @param reason required when the tier is neither the one in force nor the one suggested
     * @throws IllegalArgumentException when the reason is missing
     * @throws NotVisible when the class may not be decided for by this adult
     */
    public void decide(UUID classId, UUID childId, Tier tier, String reason) {
        decideAll(classId, List.of(new Decided(childId, tier, reason)));
    }

    /**
     * Stores decisions on several children of a class, all of them or none.
     *
     * @throws IllegalArgumentException when a reason is missing or the class has no unit
     * @throws NotVisible when the class may not be decided for by this adult
     */
    public void decideAll(UUID classId, List<Decided> decisions) {
        access.requireClass(classId);
        UnitInHand unit = pacing.unit(classId).orElseThrow(
                () -> new Refused("unit.none"));
        ClassPicture picture = picture(classId);
        decisions.forEach(decided -> store(unit, picture, decided));
    }

    private void store(UnitInHand unit, ClassPicture picture, Decided decided) {
        ClassPicture.OneChild one = picture.children().stream()
                .filter(c -> c.row().childId().equals(decided.childId())).findFirst().orElseThrow(NotVisible::new);
        Suggestion suggestion = picture.review().of(one.row().schoolKey()).orElseThrow(NotVisible::new);
        boolean move = suggestion.verdict() == Verdict.MOVE;
        Tier tier = decided.tier();
        String choice = tier == suggestion.suggested() && move ? "accept" : tier == one.state().tier() ? "keep"
                : "other";
        if (choice.equals("other") && decided.reason().isBlank()) {
            throw new Refused("decision.reason");
        }
        SignedIn adult = current.get();
        store.decide(adult.districtId(), unit.unitId(), decided.childId(), picture.day(), one.state().tier(), tier,
                choice, suggestion.suggested(), suggestion.verdict().code(),
                suggestion.versions().rules() + " " + suggestion.versions().rulesVersion() + ", parameters "
                        + suggestion.versions().parametersVersion(), decided.reason().strip(),
                evidence(suggestion, picture, one.row().schoolKey()), adult.adultId());
    }

    private String evidence(Suggestion suggestion, ClassPicture picture, String child) {
        Map<String, Object> snapshot = new LinkedHashMap<>();
        snapshot.put("rule", suggestion.rule());
        snapshot.put("chance", suggestion.chance());
        snapshot.put("looks", suggestion.looks());
        snapshot.put("days", suggestion.days());
        snapshot.put("due", picture.due());
        snapshot.put("conditions", suggestion.conditions().stream().map(TierService::condition).toList());
        snapshot.put("look_ids", picture.looks().stream().filter(l -> l.child().equals(child)).map(Look::id)
                .toList());
        return json.writeValueAsString(snapshot);
    }

    private static Map<String, Object> condition(Condition condition) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("required", condition.required().toString());
        map.put("measured", condition.measured());
        map.put("met", condition.met());
        return map;
    }

    /** Takes over a tier decided elsewhere, such as before the first use. */
    public void takeOver(UUID unitId, UUID childId, LocalDate asOf, Tier from, Tier to, String reason) {
        store.decide(current.get().districtId(), unitId, childId, asOf, from, to, "start", null, null, null, reason,
                "{}", current.get().adultId());
    }

    /** Writes down a concern or a request for evaluation; {@code kind} is concern or evaluation_request. */
    public void recordConcern(UUID childId, String kind, LocalDate on, String words) {
        access.requireChild(childId);
        store.addConcern(current.get().districtId(), childId, kind, on, words, current.get().adultId());
    }

    /** Writes down sessions given against planned. */
    public void recordDose(UUID unitId, UUID childId, LocalDate on, ChildState.@Nullable Dose dose) {
        access.requireChild(childId);
        if (dose != null) {
            store.addDose(current.get().districtId(), unitId, childId, on, dose, current.get().adultId());
        }
    }
}
