package org.stepwell.core.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.check.Share;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;

/**
 * Another rule file, or other thresholds, over the class's own history: who would have moved when, beside what was
 * decided. The tried rules are followed from the start, as if every suggestion had been accepted. Changes nothing.
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
     * @param said what the tried rules say, with the tier in force had they been followed from the start
     * @param decidedBefore tier in force by decision at the review before; on level when nothing was decided by then
     * @param decided tier in force by decision from this review on; {@code null} when nothing was decided by then
     */
    public record Line(Suggestion said, Tier decidedBefore, @Nullable Tier decided) {
        /** Day of the review. */
        public LocalDate day() {
            return said.day();
        }

        /** The school's own id. */
        public String child() {
            return said.child();
        }

        /** Tier in force before, had the tried rules been followed from the start. */
        public Tier before() {
            return said.current();
        }

        /** Tier in force after, had the tried rules been followed from the start. */
        public Tier after() {
            return said.suggested();
        }

        /** Whether the tried rules would have moved the child. */
        public boolean moves() {
            return said.verdict() == Verdict.MOVE;
        }

        /** Whether it was decided to move the child, at this review or since the one before. */
        public boolean decidedMove() {
            return decided != null && decided != decidedBefore;
        }

        /** Whether the tried rules end where the teacher did; where nothing was decided nothing stands against them. */
        public boolean agrees() {
            return decided == null || decided == after();
        }
    }

    /** Copies the list. */
    public WhatIf {
        lines = List.copyOf(lines);
    }

    /** The moves of the tried rules: who would have moved when. */
    public List<Line> moves() {
        return lines.stream().filter(Line::moves).toList();
    }

    /** The moves that were decided and that the tried rules would not have made at that review. */
    public List<Line> onlyDecided() {
        return lines.stream().filter(l -> l.decidedMove() && !(l.moves() && l.agrees())).toList();
    }

    /** How many of the children stand, after the last review, where the decisions put them; of those decided on. */
    public Share standAlike() {
        Map<String, Line> last = new HashMap<>();
        lines.stream().filter(l -> l.decided() != null).forEach(l -> last.put(l.child(), l));
        return new Share((int) last.values().stream().filter(Line::agrees).count(), last.size());
    }

    /** The days on which anything was decided, oldest first. */
    public static SortedSet<LocalDate> daysOf(Collection<Decided> decisions) {
        SortedSet<LocalDate> days = new TreeSet<>();
        decisions.forEach(one -> days.add(one.day()));
        return days;
    }

    /**
     * Tries rules on a history.
     *
     * @param looks every look of the class, in any order
     * @param decisions as they were made, in any order; may be empty. Of several on a child and day the last given holds
     * @param days of the reviews; each knows only what is dated up to its end
     * @param joined the day on which each child came who was not there from the start of the unit
     */
    public static WhatIf tried(
            ClassSetting setting,
            Collection<Look> looks,
            Collection<Decided> decisions,
            Collection<LocalDate> days,
            Map<String, LocalDate> joined,
            RuleFile rules,
            Parameters parameters) {
        Map<String, TreeMap<LocalDate, Tier>> decided = new HashMap<>();
        decisions.forEach(one -> decided.computeIfAbsent(one.child(), c -> new TreeMap<>())
                .put(one.day(), one.tier()));
        Map<String, Tier> before = new HashMap<>();
        List<Line> lines = new ArrayList<>();
        new Replay(setting, looks, joined, rules, parameters).run(days, sitting -> {
            for (Suggestion said : sitting.review().suggestions()) {
                Map.Entry<LocalDate, Tier> held =
                        decided.getOrDefault(said.child(), new TreeMap<>()).floorEntry(said.day());
                Tier now = held == null ? null : held.getValue();
                lines.add(new Line(said, before.getOrDefault(said.child(), Tier.ON_LEVEL), now));
                if (now != null) {
                    before.put(said.child(), now);
                }
            }
        });
        return new WhatIf(rules.name(), rules.version(), lines);
    }
}
