package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import org.stepwell.core.evidence.ChildPicture;
import org.stepwell.core.evidence.EvidenceFilter;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;

/**
 * Asks a rule file about a class. One object serves one class, its looks and one rule file, for any number of days; not
 * for use by several threads at once.
 */
public final class Reviewer {
    private final RuleFile rules;
    private final Parameters parameters;
    private final ClassHistory history;
    private final NoteFinder notes;

    /**
     * @param setting what is known beside the looks
     * @param looks every look of the class there is, also replaced and withdrawn ones, in any order
     * @param rules the rules to ask
     * @param parameters behind the estimates
     */
    public Reviewer(ClassSetting setting, Collection<Look> looks, RuleFile rules, Parameters parameters) {
        this.rules = rules;
        this.parameters = parameters;
        this.history = new ClassHistory(setting, looks, new EvidenceFilter(parameters), rules.settings());
        this.notes = new NoteFinder(history);
    }

    /** The suggestions for a class on one day, in one call. */
    public static ClassReview review(
            ClassSetting setting,
            Collection<Look> looks,
            Collection<ChildState> states,
            LocalDate day,
            RuleFile rules,
            Parameters parameters) {
        return new Reviewer(setting, looks, rules, parameters).review(states, day);
    }

    /** Every child with any look dated up to the day. */
    public SortedSet<String> children(LocalDate day) {
        return history.on(day).looks().children();
    }

    /** What the evidence says about a child on the day. */
    public ChildPicture picture(String child, LocalDate day) {
        return history.on(day).sight(child).picture();
    }

    /** What to ask a child now, by skill of the progression; due or not. */
    public Map<String, AskNow> askNow(String child, LocalDate day) {
        Sight now = history.on(day).sight(child);
        Map<String, AskNow> all = new LinkedHashMap<>();
        history.setting().progression().skills()
                .forEach(skill -> all.put(skill.code(), AskNow.of(history.setting().progression(), skill.code(), now)));
        return all;
    }

    /**
     * The suggestions for a class.
     *
     * @param states the children to review, each once; what is known of them on the day
     * @param day everything dated up to its end is known, nothing later
     */
    public ClassReview review(Collection<ChildState> states, LocalDate day) {
        List<ChildState> sorted = states.stream()
                .sorted(Comparator.comparing(ChildState::child))
                .toList();
        // No child's answer rests on another's, so they are worked out side by side; the order stays.
        List<Suggestion> single =
                sorted.parallelStream().map(state -> suggestion(state, day)).toList();
        List<ClassDip> dips = Dips.of(single, rules.settings().dipShare());
        List<Suggestion> told = new ArrayList<>();
        for (int i = 0; i < single.size(); i++) {
            told.add(Cautions.added(Dips.told(single.get(i), dips), sorted.get(i), history));
        }
        return new ClassReview(day, told, dips);
    }

    /**
     * What a review said about a child, found out in depth: which looks mattered, what would settle it, what to ask
     * next. Costs about as much as reviewing a hundred children.
     */
    public Details details(ChildState state, LocalDate day) {
        Sight now = history.on(day).sight(state.child());
        Judgement said = judge(state, now);
        return new Details(
                Weighing.of(rules, state, now, said, back -> history.earlier(state, day, back)),
                Settling.settled(rules, said, now),
                Settling.of(rules, state, now, said, back -> history.earlier(state, day, back)),
                Optional.ofNullable(Asking.of(history.setting().progression(), now)));
    }

    private Judgement judge(ChildState state, Sight now) {
        return Judgement.of(rules, state, now, back -> history.earlier(state, now.day(), back));
    }

    private Suggestion suggestion(ChildState state, LocalDate day) {
        Sight now = history.on(day).sight(state.child());
        Judgement said = judge(state, now);
        return new Suggestion(
                state.child(),
                day,
                state.tier(),
                said.tier(),
                said.verdict(),
                now.chances(),
                now.valid().size(),
                Sight.days(now.valid()),
                now.lastSeen(),
                said.rule(),
                said.conditions(),
                SkillSights.of(now),
                notes.of(state, now, said),
                Shortfalls.missing(said, now),
                said.nearest() == null || said.verdict() != Verdict.STAY
                        ? null
                        : said.nearest().to(),
                Shortfalls.notBefore(said, state, now),
                List.of(),
                new Suggestion.Versions(rules.name(), rules.version(), parameters.version()));
    }
}
