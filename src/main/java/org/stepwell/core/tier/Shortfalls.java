package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is short before the rules can speak, in numbers. */
final class Shortfalls {
    private static final int LONGEST_WAIT = 250;

    private Shortfalls() {}

    static List<Suggestion.Missing> missing(Judgement said, Sight now) {
        if (said.verdict() != Verdict.NOT_ENOUGH || said.rule().equals(Suggestion.TOO_FEW_DUE)) {
            return List.of();
        }
        if (said.rule().equals(Suggestion.NOT_SEEN_LATELY)) {
            return List.of(new Suggestion.Missing(Measure.LOOKS_SINCE_REVIEW, 1));
        }
        List<Suggestion.Missing> all = new ArrayList<>();
        for (Condition condition : said.conditions()) {
            Requirement required = condition.required();
            if (required.part() == Requirement.Part.ENOUGH && !condition.met()) {
                double measured = condition.measured() == null ? 0 : condition.measured();
                int more = (int) StrictMath.ceil(required.threshold() - measured);
                if (required.measure() == Measure.SKILLS_WITH_SIGNAL) {
                    more = daysToASignal(now);
                }
                all.add(new Suggestion.Missing(required.measure(), Math.max(1, more)));
            }
        }
        return all;
    }

    /** Fewest further evidence days that give one skill a signal. */
    private static int daysToASignal(Sight now) {
        int most = now.daySteps().values().stream().mapToInt(List::size).max().orElse(0);
        return now.context().settings().signal().fewest() - most;
    }

    /** When the minimum stay is all that stands against a move: the first day on which it no longer does. */
    static @Nullable LocalDate notBefore(Judgement said, ChildState state, Sight now) {
        if (said.verdict() != Verdict.STAY || state.since() == null) {
            return null;
        }
        List<Condition> open =
                said.conditions().stream().filter(c -> !c.met()).toList();
        if (open.size() != 1 || open.getFirst().required().measure() != Measure.SCHOOL_DAYS_IN_TIER) {
            return null;
        }
        LocalDate at = now.day();
        double stay = open.getFirst().required().threshold();
        for (int i = 0; i < LONGEST_WAIT; i++) {
            at = at.plusDays(1);
            if (now.context().calendar().isSchoolDay(at)
                    && now.context().calendar().schoolDaysBetween(state.since(), at) >= stay) {
                return at;
            }
        }
        return null;
    }
}
