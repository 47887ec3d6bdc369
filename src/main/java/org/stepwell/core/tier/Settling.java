package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Reading;

/**
 * Finds the fewest further looks that are likely to settle an answer: it tries them, on this child's own evidence, and
 * asks the rules what they would say. Nothing is claimed that was not tried.
 */
final class Settling {
    private static final double LIKELY = 0.6;
    private static final double AS_LIKELY_AS_NOT = 0.5;
    private static final double HARDLY = 0.05;
    private static final int TRIED_BEYOND = 3;
    private static final int MOST_LOOKS = 8;
    private static final List<Kind> OTHER_KINDS = List.of(Kind.EXIT_TASK, Kind.TABLE, Kind.SPECIALIST);

    private final RuleFile rules;
    private final ChildState state;
    private final Sight now;
    private final IntFunction<@Nullable Sight> earlier;
    private final boolean beyond;
    private final Details.Answer today;

    private Settling(
            RuleFile rules, ChildState state, Sight now, Judgement said, IntFunction<@Nullable Sight> earlier) {
        this.rules = rules;
        this.state = state;
        this.now = now;
        this.earlier = earlier;
        this.beyond = state.tier() != Tier.SUPPORT
                && said.tier() != Tier.SUPPORT
                && now.chances().extension() > now.chances().support();
        this.today = answer(said, now);
    }

    static Optional<Details.Settle> of(
            RuleFile rules, ChildState state, Sight now, Judgement said, IntFunction<@Nullable Sight> earlier) {
        boolean looksCannot = now.context().due().size() < TierChances.FEWEST_DUE_SKILLS
                || said.rule().equals(Suggestion.TOO_FEW_SESSIONS);
        return looksCannot ? Optional.empty() : new Settling(rules, state, now, said, earlier).search(said);
    }

    /** The chance that one look today without help shows the step or more. */
    static double reaches(Sight sight, String skill, int step) {
        return reaches(sight.reading(), skill, step);
    }

    /** The same of evidence as read. */
    static double reaches(Reading reading, String skill, int step) {
        double[] next = reading.nextLook(skill, Help.NONE);
        double sum = 0;
        for (int s = step - 1; s < next.length; s++) {
            sum += next[s];
        }
        return Math.min(1, sum);
    }

    private Optional<Details.Settle> search(Judgement said) {
        List<Suggestion.Missing> missing = Shortfalls.missing(said, now);
        int fewest = missing.stream().mapToInt(Suggestion.Missing::more).max().orElse(1);
        Details.Settle best = null;
        for (int n = fewest; n <= Math.min(MOST_LOOKS, fewest + TRIED_BEYOND); n++) {
            for (List<Details.Wanted> plan : plans(n, missing)) {
                Details.Settle tried = tried(plan);
                if (tried != null && (best == null || tried.likely() > best.likely() + 1e-12)) {
                    best = tried;
                }
            }
            if (best != null && (today.settled() || best.likely() >= LIKELY)) {
                return Optional.of(best);
            }
        }
        return best != null && best.likely() >= AS_LIKELY_AS_NOT ? Optional.of(best) : Optional.empty();
    }

    /** Each due skill alone on as many days as looks; the due skills in turn, least seen or least certain first. */
    private List<List<Details.Wanted>> plans(int n, List<Suggestion.Missing> missing) {
        List<LocalDate> days = schoolDays(n);
        int fewestDays = Math.max(more(missing, Measure.DAYS), more(missing, Measure.DAYS_AT_ANY_SKILL));
        Kind other = more(missing, Measure.KINDS) > 0 ? otherKind() : Kind.TABLE;
        List<String> skills = new ArrayList<>(now.context().due().keySet());
        skills.sort(Comparator.comparingInt(s -> now.daySteps().get(s).size()));
        List<List<Details.Wanted>> plans = new ArrayList<>();
        for (String skill : skills) {
            List<Details.Wanted> plan = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                plan.add(wanted(skill, days.get(i), i == 0 ? other : Kind.TABLE));
            }
            plans.add(plan);
        }
        if (n > 1) {
            plans.add(inTurn(skills, n, fewestDays, other, days));
            skills.sort(Comparator.comparingDouble(s -> Math.abs(reaches(now, s, target(s)) - 0.5)));
            plans.add(inTurn(skills, n, fewestDays, other, days));
        }
        return plans;
    }

    private List<Details.Wanted> inTurn(
            List<String> skills, int n, int fewestDays, Kind other, List<LocalDate> days) {
        int spread = Math.max(1, Math.min(n, fewestDays));
        List<Details.Wanted> plan = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            String skill = skills.get(i % skills.size());
            plan.add(wanted(skill, days.get(i * spread / n), i == 0 ? other : Kind.TABLE));
        }
        return plan;
    }

    private static int more(List<Suggestion.Missing> missing, Measure measure) {
        return missing.stream()
                .filter(m -> m.measure() == measure)
                .mapToInt(Suggestion.Missing::more)
                .findFirst()
                .orElse(0);
    }

    private Kind otherKind() {
        Set<Kind> seen = Measuring.kinds(now);
        return OTHER_KINDS.stream().filter(k -> !seen.contains(k)).findFirst().orElse(Kind.TABLE);
    }

    private Details.Wanted wanted(String skill, LocalDate day, Kind kind) {
        return new Details.Wanted(skill, target(skill), day, kind);
    }

    private int target(String skill) {
        int expected = now.context().due().get(skill);
        return beyond ? Math.min(5, expected + 1) : expected;
    }

    private List<LocalDate> schoolDays(int n) {
        List<LocalDate> days = new ArrayList<>();
        for (LocalDate at = now.day().plusDays(1); days.size() < n; at = at.plusDays(1)) {
            if (now.context().calendar().isSchoolDay(at)) {
                days.add(at);
            }
        }
        return days;
    }

    private Details.@Nullable Settle tried(List<Details.Wanted> plan) {
        Details.Answer reached = after(plan, (1 << plan.size()) - 1);
        Details.Answer missed = after(plan, 0);
        boolean already = today.settled();
        if (already ? !differs(reached) && !differs(missed) : !reached.settled() && !missed.settled()) {
            return null;
        }
        double likely = 0;
        for (int pattern = 0; pattern < 1 << plan.size(); pattern++) {
            Details.Answer answer = after(plan, pattern);
            if (already ? differs(answer) : answer.settled()) {
                likely += chance(plan, pattern);
            }
        }
        return already && likely < HARDLY ? null : new Details.Settle(plan, reached, missed, likely);
    }

    private boolean differs(Details.Answer answer) {
        return answer.suggested() != today.suggested() || answer.fits() != today.fits();
    }

    /** What the rules would say after the looks; bit i of the pattern: the i-th shows its step. */
    private Details.Answer after(List<Details.Wanted> plan, int pattern) {
        Sight then = now.later(made(plan, pattern, plan.size()), plan.getLast().day());
        ChildState reviewed = state.reviewed(now.day(), state.tier());
        Judgement said = Judgement.of(rules, reviewed, then, back -> back == 0 ? now : earlier.apply(back - 1));
        return answer(said, then);
    }

    private Details.Answer answer(Judgement said, Sight sight) {
        Tier fits = sight.chances().likeliest();
        return new Details.Answer(
                said.verdict(), said.tier(), fits, sight.chances().of(fits), settled(rules, said, sight));
    }

    /** Whether the rules speak and it is clear which tier fits. */
    static boolean settled(RuleFile rules, Judgement said, Sight sight) {
        return said.verdict() != Verdict.NOT_ENOUGH
                && sight.chances().of(sight.chances().likeliest()) >= rules.settings().settledChance();
    }

    /** The chance of the pattern, look by look, each foretold from the ones before it. */
    private double chance(List<Details.Wanted> plan, int pattern) {
        double chance = 1;
        for (int i = 0; i < plan.size(); i++) {
            Details.Wanted next = plan.get(i);
            Reading then = now.later(made(plan, pattern, i), next.day()).reading();
            double reaches = reaches(then, next.skill(), next.step());
            chance *= (pattern >> i & 1) == 1 ? reaches : 1 - reaches;
        }
        return chance;
    }

    private List<CountedLook> made(List<Details.Wanted> plan, int pattern, int first) {
        List<CountedLook> looks = new ArrayList<>();
        for (int i = 0; i < first; i++) {
            looks.add(Supposed.look(now.child(), plan.get(i), (pattern >> i & 1) == 1, i));
        }
        return looks;
    }
}
