package org.stepwell.plan;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.plan.PlannedSessions.Outcome;
import org.stepwell.core.tier.ChildState.Dose;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/**
 * Plans of a child: the adults of the class write, change and end them; whoever may see the child reads them and logs
 * sessions.
 */
@Service
@Transactional
public class PlanService {
    /** Words of how a plan can end. */
    public static final List<String> OUTCOMES = List.of("goal_met", "faded", "changed", "more_help", "left");
    private static final int LONGEST_SESSION = 180;

    private final PlanStore store;
    private final RosterService roster;
    private final Access access;
    private final CurrentAdult current;

    PlanService(PlanStore store, RosterService roster, Access access, CurrentAdult current) {
        this.store = store;
        this.roster = roster;
        this.access = access;
        this.current = current;
    }

    /** What is wrong with what an adult wrote, by the names of the fields. */
    public static final class Refused extends RuntimeException {
        private final List<String> fields;

        Refused(List<String> fields) {
            super(String.join(", ", fields));
            this.fields = List.copyOf(fields);
        }

        /** Names of the fields: those of {@link PlanTerms}, or {@code day}, {@code running}, {@code ended}. */
        public List<String> fields() {
            return fields;
        }
    }

    /** All plans of a child, oldest first. */
    public List<Plan> plans(UUID childId) {
        access.requirePart(childId, Access.Part.PLAN);
        return store.plans(childId);
    }

    /** Whether this adult may read plans of the child: a child can be shared without them. */
    public boolean mayRead(UUID childId) {
        return access.children(Access.Part.PLAN).contains(childId);
    }

    /** Children of whom the last two sessions of a running plan were missed, of those whose plans are seen. */
    public List<UUID> missedTwice(Collection<UUID> children) {
        LocalDate today = current.today();
        Set<UUID> seen = access.children(Access.Part.PLAN);
        return store.withPlan(children.stream().filter(seen::contains).toList()).stream().filter(child ->
                store.plans(child).stream().anyMatch(plan -> plan.runs(today) && plan.missedTwiceRunning())).toList();
    }

    /** The plan that runs today, the newest if there are several. */
    public Optional<Plan> running(UUID childId) {
        return plans(childId).stream().filter(plan -> plan.runs(current.today())).reduce((a, b) -> b);
    }

    /**
     * Sessions of extra help given against planned today, of each child for whom a plan of extra help runs.
     *
     * @param children children this adult may see
     */
    public Map<UUID, Dose> doses(Collection<UUID> children, SchoolCalendar calendar) {
        LocalDate today = current.today();
        Map<UUID, Dose> doses = new HashMap<>();
        Set<UUID> seen = access.children(Access.Part.PLAN);
        for (UUID child : store.withPlan(children.stream().filter(seen::contains).toList())) {
            store.plans(child).stream().filter(plan -> plan.support() && plan.runs(today)).reduce((a, b) -> b)
                    .map(plan -> plan.dose(calendar, today)).ifPresent(dose -> doses.put(child, dose));
        }
        return doses;
    }

    /** Whether this adult may write, change and end plans of the child. */
    public boolean mayWrite(UUID childId) {
        return access.classes().contains(roster.child(childId).classId());
    }

    /**
     * Begins a plan.
     *
     * @throws Refused when the terms are wrong or a plan of that kind runs already
     * @throws NotVisible when the adult has no part in the class
     */
    public UUID start(UUID childId, boolean support, PlanTerms terms) {
        SignedIn adult = writer(childId);
        check(terms);
        if (store.plans(childId).stream().anyMatch(p -> p.support() == support && p.endedOn() == null)) {
            throw new Refused(List.of("running"));
        }
        UUID plan = store.start(adult.districtId(), childId, support, terms.from(), adult.adultId());
        store.phase(adult.districtId(), plan, 1, terms, adult.adultId());
        return plan;
    }

    /**
     * Changes a plan from a day on; what held before stays as it was.
     *
     * @throws Refused when the terms are wrong, the day lies before the last change, or it is ended
     */
    public void change(UUID childId, UUID planId, PlanTerms terms) {
        SignedIn adult = writer(childId);
        check(terms);
        Plan plan = open(childId, planId);
        if (!terms.from().isAfter(plan.phases().getLast().from())
                || !store.phase(adult.districtId(), planId, plan.phases().size() + 1, terms, adult.adultId())) {
            throw new Refused(List.of("day"));
        }
    }

    /**
     * Logs a session, given or missed.
     *
     * @param sessionId made by the caller; the same id again does nothing
     * @throws Refused when the day is not one of the plan's up to today, or the minutes are not 0-180
     */
    public void log(UUID childId, UUID planId, UUID sessionId, LocalDate on, Outcome outcome, int minutes,
            String words) {
        access.requirePart(childId, Access.Part.PLAN);
        Plan plan = open(childId, planId);
        if (on.isAfter(current.today()) || on.isBefore(plan.startedOn())) {
            throw new Refused(List.of("day"));
        }
        if (minutes < 0 || minutes > LONGEST_SESSION) {
            throw new Refused(List.of("minutes"));
        }
        SignedIn adult = current.get();
        store.session(adult.districtId(), planId, new Plan.Held(sessionId, on, outcome,
                outcome == Outcome.GIVEN ? minutes : 0, words.strip(), adult.name()), null, false, adult.adultId());
    }

    /** Takes a session back; the row stays as history. */
    public void takeBack(UUID childId, UUID planId, UUID sessionId) {
        access.requirePart(childId, Access.Part.PLAN);
        Plan plan = open(childId, planId);
        SignedIn adult = current.get();
        plan.sessions().stream().filter(s -> s.sessionId().equals(sessionId)).findFirst().ifPresent(held ->
                store.session(adult.districtId(), planId, new Plan.Held(UUID.randomUUID(), held.on(), held.outcome(),
                        held.minutes(), held.words(), adult.name()), sessionId, true, adult.adultId()));
    }

    /**
     * Ends a plan.
     *
     * @param outcome one of {@link #OUTCOMES}
     * @throws Refused when the day lies before its start or after today, or it is ended already
     */
    public void end(UUID childId, UUID planId, LocalDate on, String outcome, String words) {
        SignedIn adult = writer(childId);
        Plan plan = open(childId, planId);
        if (on.isBefore(plan.startedOn()) || on.isAfter(current.today()) || !OUTCOMES.contains(outcome)) {
            throw new Refused(List.of("day"));
        }
        if (!store.end(adult.districtId(), planId, on, outcome, words.strip(), adult.adultId())) {
            throw new Refused(List.of("ended"));
        }
    }

    private SignedIn writer(UUID childId) {
        ChildRow child = roster.child(childId);
        access.requireClass(child.classId());
        return current.get();
    }

    private Plan open(UUID childId, UUID planId) {
        Plan plan = store.plans(childId).stream().filter(p -> p.planId().equals(planId)).findFirst()
                .orElseThrow(NotVisible::new);
        if (plan.endedOn() != null) {
            throw new Refused(List.of("ended"));
        }
        return plan;
    }

    private static void check(PlanTerms terms) {
        List<String> wrong = terms.problems();
        if (!wrong.isEmpty()) {
            throw new Refused(wrong);
        }
    }
}
