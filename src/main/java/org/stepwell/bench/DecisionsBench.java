package org.stepwell.bench;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.stepwell.core.evidence.EvidenceFilter;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.Tier;

/**
 * Measures decisions against known truth. Classrooms are simulated from a seed; deciders see only what adults wrote;
 * the ideal observer, who knows how the classrooms came about, is the ceiling and rules of thumb are the floor.
 */
public final class DecisionsBench {
    /** Classrooms per family when nothing else is asked. */
    public static final int USUAL_COUNT = 30;

    private static final int QUICK_COUNT = 4;
    private static final String IDEAL = "ideal";

    private final long seed;
    private final int count;
    private final List<Decider> deciders = new ArrayList<>();

    private DecisionsBench(long seed, int count) {
        this.seed = seed;
        this.count = count;
        Parameters parameters = Parameters.shipped();
        deciders.add(new RulesDecider(RuleFile.shipped(RuleFile.WEIGHED), parameters));
        deciders.add(new RulesDecider(RuleFile.shipped(RuleFile.CONVENTIONAL), parameters));
        deciders.add(new ChanceDecider(new EvidenceFilter(parameters)));
        deciders.addAll(ThumbRules.all());
    }

    /**
     * Runs and reports: one JSON line per measure on {@code out}, a table to read on {@code table}. The same seed and
     * count give the same lines on every machine.
     *
     * @param seed of the classrooms
     * @param quick few classrooms, for a first look
     * @param count classrooms per family; 0 or less for the usual number
     */
    public static void run(long seed, boolean quick, int count, PrintStream out, PrintStream table) {
        int classrooms = count > 0 ? count : quick ? QUICK_COUNT : USUAL_COUNT;
        new DecisionsBench(seed, classrooms).report(out, table);
    }

    /** Runs and reports, with the table on the error stream. */
    public static void run(long seed, boolean quick, int count, PrintStream out) {
        run(seed, quick, count, out, System.err);
    }

    private void report(PrintStream out, PrintStream table) {
        BenchReport report = new BenchReport(out, table, seed, count);
        for (Family family : Families.reported()) {
            report.family(family.name, scores(family));
        }
        report.finish();
    }

    /** The score of the ideal observer, first, and of every decider. */
    private Map<String, Score> scores(Family family) {
        Map<String, Score> scores = new LinkedHashMap<>();
        IdealObserver ideal = new IdealObserver(family);
        for (int i = 0; i < count; i++) {
            Classroom room = Simulator.classroom(family, seedOf(family, i));
            RoomEvidence evidence = new RoomEvidence(room);
            for (Classroom.Child child : room.children()) {
                List<Decider.Call> best = new ArrayList<>();
                for (Tier tier : ideal.tiers(child)) {
                    best.add(new Decider.Call(tier, 0));
                }
                score(scores, IDEAL).add(best, child.truth());
                for (Decider decider : deciders) {
                    score(scores, decider.name()).add(decider.decide(room, child, evidence), child.truth());
                }
            }
        }
        return scores;
    }

    private long seedOf(Family family, int classroom) {
        return seed * 1_000_003L + family.name.hashCode() * 31L + classroom;
    }

    private static Score score(Map<String, Score> scores, String name) {
        return scores.computeIfAbsent(name, n -> new Score());
    }
}
