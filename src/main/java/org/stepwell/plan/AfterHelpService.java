package org.stepwell.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.plan.Fading;
import org.stepwell.core.plan.LookAgain;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** How help ends and whether what was learned holds: the goal in looks without help, and looks again after the end. */
@Service
@Transactional(readOnly = true)
public class AfterHelpService {
    private static final List<String> HELP_ENDED = List.of("goal_met", "faded");

    private final PlanService plans;
    private final RosterService roster;
    private final ObservationService observations;
    private final ProgressionService progressions;
    private final Access access;
    private final CurrentAdult current;

    AfterHelpService(PlanService plans, RosterService roster, ObservationService observations,
            ProgressionService progressions, Access access, CurrentAdult current) {
        this.plans = plans;
        this.roster = roster;
        this.observations = observations;
        this.progressions = progressions;
        this.access = access;
        this.current = current;
    }

    /**
     * A plan whose help ended, and the looks again after it.
     *
     * @param plan the plan
     * @param looks of two and of four weeks
     */
    public record Ended(Plan plan, List<LookAgain> looks) {
        /** Whether the newest look made fell short of the goal. */
        public boolean fellBack() {
            return looks.stream().filter(look -> look.made() != null).reduce((a, b) -> b)
                    .filter(look -> !look.holds()).isPresent();
        }
    }

    /**
     * A child to look at again.
     *
     * @param child the child
     * @param skill code of the skill that was in focus
     * @param since day from which the look is due
     */
    public record Due(ChildRow child, String skill, LocalDate since) {}

    /**
     * How far the goal of a plan is shown without help in the phase of today.
     *
     * @throws NotVisible when the adult may not read plans of the child
     */
    public Fading standing(UUID childId, Plan plan) {
        access.requirePart(childId, Access.Part.PLAN);
        ChildRow child = roster.child(childId);
        PlanTerms now = plan.on(current.today());
        return Fading.of(looks(child.classId()).of(child.schoolKey(), now.skill()), now.from(), now.step());
    }

    /**
     * Plans of extra help that ended since the goal was met or help was faded out, oldest first, with their looks again.
     *
     * @throws NotVisible when the adult may not read plans of the child
     */
    public List<Ended> ended(UUID childId) {
        List<Plan> all = plans.plans(childId);
        ChildRow child = roster.child(childId);
        return ended(child, all, looks(child.classId()));
    }

    /** Children of a class to look at again today, of those whose plans this adult reads; those waiting longest first. */
    public List<Due> due(UUID classId) {
        LocalDate today = current.today();
        List<Due> due = new ArrayList<>();
        EffectiveLooks looks = looks(classId);
        for (ChildRow child : roster.children(classId)) {
            if (plans.mayRead(child.childId())) {
                List<Plan> all = plans.plans(child.childId());
                for (Ended ended : ended(child, all, looks)) {
                    PlanTerms last = ended.plan().phases().getLast();
                    if (all.stream().noneMatch(p -> helpsAgain(p, ended.plan(), last.skill()))) {
                        ended.looks().stream().filter(look -> look.owed(today)).findFirst()
                                .ifPresent(look -> due.add(new Due(child, last.skill(), look.due())));
                    }
                }
            }
        }
        due.sort(java.util.Comparator.comparing(Due::since));
        return due;
    }

    /** Where help at the skill began again there is nothing to hold yet. */
    private static boolean helpsAgain(Plan plan, Plan ended, String skill) {
        return plan.support() && !plan.planId().equals(ended.planId())
                && !plan.startedOn().isBefore(Objects.requireNonNull(ended.endedOn()))
                && plan.phases().getLast().skill().equals(skill);
    }

    private static List<Ended> ended(ChildRow child, List<Plan> plans, EffectiveLooks looks) {
        return plans.stream().filter(plan -> plan.support() && plan.endedOn() != null
                && HELP_ENDED.contains(plan.outcome())).map(plan -> {
                    PlanTerms last = plan.phases().getLast();
                    List<CountedLook> of = looks.of(child.schoolKey(), last.skill());
                    return new Ended(plan, LookAgain.after(Objects.requireNonNull(plan.endedOn()), last.step(), of));
                }).toList();
    }

    private EffectiveLooks looks(UUID classId) {
        return EffectiveLooks.of(observations.ofClass(classId), progressions.ofClass(classId), current.today());
    }
}
