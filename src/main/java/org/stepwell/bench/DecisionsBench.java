package org.stepwell.bench;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import java.util.stream.Stream;
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
    private static final int DRAWN_OF_EACH = 10;
    private static final String IDEAL = "ideal";

    /** A family by what the benchmark needs of it: rooms from a seed, and the observer who knows how they came about. */
    private record Source(String name, LongFunction<Classroom> rooms, Function<Classroom.Child, List<Tier>> ideal) {}

    /** Which families are run. */
    public enum Set {
        /** Those the thresholds were chosen in sight of. */
        REPORTED,
        /** Those of the other simulation, in sight of which nothing was chosen at first. */
        UNSEEN,
        /** Ten of each simulation drawn by the seed: another seed, other families. */
        DRAWN
    }

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
     * @param set the families to run
     * @param seed of the classrooms
     * @param quick few classrooms, for a first look
     * @param count classrooms per family; 0 or less for the usual number
     */
    public static void run(Set set, long seed, boolean quick, int count, PrintStream out, PrintStream table) {
        int classrooms = count > 0 ? count : quick ? QUICK_COUNT : USUAL_COUNT;
        new DecisionsBench(seed, classrooms).report(set, out, table);
    }

    /** Runs and reports, with the table on the error stream. */
    public static void run(Set set, long seed, boolean quick, int count, PrintStream out) {
        run(set, seed, quick, count, out, System.err);
    }

    private void report(Set set, PrintStream out, PrintStream table) {
        BenchReport report = new BenchReport(out, table, seed, count);
        for (Source source : sources(set)) {
            report.family(source.name(), scores(source));
        }
        report.finish();
    }

    private List<Source> sources(Set set) {
        return switch (set) {
            case REPORTED -> Families.reported().stream().map(DecisionsBench::source).toList();
            case UNSEEN -> OtherFamily.all().stream().map(DecisionsBench::source).toList();
            case DRAWN -> LongStream.range(seed * DRAWN_OF_EACH, (seed + 1) * DRAWN_OF_EACH)
                    .boxed()
                    .flatMap(s -> Stream.of(source(DrawnFamilies.ladder(s)), source(DrawnFamilies.ability(s))))
                    .toList();
        };
    }

    private static Source source(Family family) {
        IdealObserver ideal = new IdealObserver(family);
        return new Source(family.name, seed -> Simulator.classroom(family, seed), ideal::tiers);
    }

    private static Source source(OtherFamily family) {
        OtherObserver ideal = new OtherObserver(family);
        return new Source(family.name, seed -> OtherSimulator.classroom(family, seed), ideal::tiers);
    }

    /** The score of the ideal observer, first, and of every decider. */
    private Map<String, Score> scores(Source source) {
        Map<String, Score> scores = new LinkedHashMap<>();
        for (int i = 0; i < count; i++) {
            Classroom room = source.rooms().apply(seedOf(source.name(), i));
            RoomEvidence evidence = new RoomEvidence(room);
            for (Classroom.Child child : room.children()) {
                List<Decider.Call> best = new ArrayList<>();
                for (Tier tier : source.ideal().apply(child)) {
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

    private long seedOf(String family, int classroom) {
        return seed * 1_000_003L + family.hashCode() * 31L + classroom;
    }

    private static Score score(Map<String, Score> scores, String name) {
        return scores.computeIfAbsent(name, n -> new Score());
    }
}
