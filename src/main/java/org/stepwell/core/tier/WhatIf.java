package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;

/**
 * Another rule file, or other thresholds, over the class's own history: who would have moved when, beside what was
 * decided. Changes nothing.
 *
 * @param rules name of the rules that were tried
 * @param version of the rules that were tried
 * @param lines one per review and child, by day and child
 */
public record WhatIf(String rules, String version, List<Line> lines) {

    /**
     * A decision as it was made.
     *
     * @param day of the review
     * @param tier in force from then on
     */
    public record Decided(LocalDate day, String child, Tier tier) {}

    /**
     * One review of one child.
     *
     * @param before tier in force before it, had the tried rules been followed from the start
     * @param after tier in force after it
     * @param decided what was decided then; {@code null} when nothing was
     * @param moves whether the tried rules would have moved the child
     */
    public record Line(
            LocalDate day, String child, Tier before, Tier after, @Nullable Tier decided, Verdict verdict,
            boolean moves) {
        /** Whether the tried rules end where the teacher did. */
        public boolean agrees() {
            return decided == null || decided == after;
        }
    }

    /** Copies the list. */
    public WhatIf {
        lines = List.copyOf(lines);
    }

    /** The moves alone: who would have moved when. */
    public List<Line> moves() {
        return lines.stream().filter(Line::moves).toList();
    }

    /**
     * Tries rules on the days on which the class was reviewed.
     *
     * @param decisions as they were made, in any order; their days are the review days
     * @param extraDays further days to review on, where a class was reviewed seldom; may be empty
     */
    public static WhatIf tried(
            ClassSetting setting,
            Collection<Look> looks,
            Collection<Decided> decisions,
            Collection<LocalDate> extraDays,
            RuleFile rules,
            Parameters parameters) {
        TreeSet<LocalDate> days = new TreeSet<>(extraDays);
        Map<String, TreeMap<LocalDate, Tier>> decided = new TreeMap<>();
        for (Decided one : decisions) {
            days.add(one.day());
            decided.computeIfAbsent(one.child(), c -> new TreeMap<>()).put(one.day(), one.tier());
        }
        List<Line> lines = new ArrayList<>();
        new Replay(setting, looks, rules, parameters).run(days, sitting -> {
            for (Suggestion one : sitting.review().suggestions()) {
                TreeMap<LocalDate, Tier> own = decided.getOrDefault(one.child(), new TreeMap<>());
                Map.Entry<LocalDate, Tier> held = own.floorEntry(one.day());
                lines.add(new Line(
                        one.day(),
                        one.child(),
                        one.current(),
                        one.suggested(),
                        held == null ? null : held.getValue(),
                        one.verdict(),
                        one.verdict() == Verdict.MOVE));
            }
        });
        return new WhatIf(rules.name(), rules.version(), lines);
    }
}
