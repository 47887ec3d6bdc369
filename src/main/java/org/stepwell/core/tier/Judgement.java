package org.stepwell.core.tier;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * What a rule file says about one sight of a child.
 *
 * @param rule id of the rule that spoke
 * @param conditions those that were asked for what it says
 * @param nearest the rule that came closest when none moved; {@code null} when one did or none applies
 */
record Judgement(Verdict verdict, Tier tier, String rule, List<Condition> conditions, @Nullable Rule nearest) {

    /** A rule and how its needs stand. */
    private record Tried(Rule rule, List<Condition> conditions) {
        boolean met() {
            return conditions.stream().allMatch(Condition::met);
        }

        boolean onlyUnjudged() {
            return conditions.stream().allMatch(c -> c.met() || c.required().part() == Requirement.Part.JUDGED);
        }

        /** How close it came: its first need counts more than all others together. */
        double closeness() {
            long met = conditions.stream().filter(Condition::met).count();
            return (conditions.getFirst().met() ? 1 : 0)
                    + (conditions.getFirst().held() > 0 ? 0.5 : 0)
                    + 0.25 * met / conditions.size();
        }
    }

    /**
     * Asks the rules.
     *
     * @param now the child today
     * @param earlier the child as seen on the last review (0), the one before (1) and so on; {@code null} = there was
     *     none
     */
    static Judgement of(RuleFile rules, ChildState state, Sight now, IntFunction<@Nullable Sight> earlier) {
        List<Condition> enough = conditions(rules.enoughFor(state), rules, state, now, earlier);
        if (!enough.stream().allMatch(Condition::met) || now.valid().isEmpty()) {
            return new Judgement(Verdict.NOT_ENOUGH, state.tier(), reason(enough, now), enough, null);
        }
        List<Tried> tried = new ArrayList<>();
        for (Rule rule : rules.from(state.tier())) {
            Tried one = new Tried(rule, conditions(rule.needs(), rules, state, now, earlier));
            if (one.met()) {
                return new Judgement(
                        Verdict.MOVE, rule.to(), rule.id(), joined(enough, one.conditions()), null);
            }
            tried.add(one);
        }
        for (Tried one : tried) {
            if (one.onlyUnjudged()) {
                return new Judgement(
                        Verdict.NOT_ENOUGH,
                        state.tier(),
                        Suggestion.TOO_FEW_SESSIONS,
                        joined(enough, one.conditions()),
                        one.rule());
            }
        }
        Tried nearest = null;
        for (Tried one : tried) {
            if (nearest == null || one.closeness() > nearest.closeness()) {
                nearest = one;
            }
        }
        return new Judgement(
                Verdict.STAY,
                state.tier(),
                Suggestion.STAY,
                nearest == null ? enough : joined(enough, nearest.conditions()),
                nearest == null ? null : nearest.rule());
    }

    private static String reason(List<Condition> enough, Sight now) {
        if (failed(enough, Measure.DUE_SKILLS)) {
            return Suggestion.TOO_FEW_DUE;
        }
        boolean old = failed(enough, Measure.SCHOOL_DAYS_SINCE_LOOK)
                || failed(enough, Measure.SCHOOL_DAYS_SINCE_ANY_LOOK)
                || failed(enough, Measure.BREAK_DAYS_SINCE_LOOK);
        return old && now.lastSeen() != null ? Suggestion.NOT_SEEN_LATELY : Suggestion.NOT_ENOUGH;
    }

    private static boolean failed(List<Condition> conditions, Measure measure) {
        return conditions.stream().anyMatch(c -> c.required().measure() == measure && !c.met());
    }

    private static List<Condition> joined(List<Condition> first, List<Condition> second) {
        List<Condition> all = new ArrayList<>(first);
        all.addAll(second);
        return all;
    }

    private static List<Condition> conditions(
            List<Requirement> required,
            RuleFile rules,
            ChildState state,
            Sight now,
            IntFunction<@Nullable Sight> earlier) {
        List<Condition> all = new ArrayList<>();
        for (Requirement one : required) {
            int held = holds(one, state, now) ? 1 : 0;
            for (int back = 0; held > 0 && held < one.reviews(); back++) {
                Sight then = earlier.apply(back);
                if (then == null || !enough(rules, state, then) || !holds(one, state, then)) {
                    break;
                }
                held++;
            }
            all.add(new Condition(one, Measuring.measure(one.measure(), now, state), held, held >= one.reviews()));
        }
        return all;
    }

    /** Whether an earlier review could speak. Kinds of evidence are counted over the unit, so only today's count. */
    private static boolean enough(RuleFile rules, ChildState state, Sight then) {
        return !then.valid().isEmpty()
                && rules.enoughFor(state).stream()
                        .allMatch(r -> r.measure() == Measure.KINDS || holds(r, state, then));
    }

    private static boolean holds(Requirement required, ChildState state, Sight sight) {
        Double measured = Measuring.measure(required.measure(), sight, state);
        return measured == null
                ? Measuring.passesWhenUnknown(required.measure())
                : required.comparison().holds(measured, required.threshold());
    }
}
