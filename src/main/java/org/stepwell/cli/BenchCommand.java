package org.stepwell.cli;

import java.util.concurrent.Callable;
import org.stepwell.bench.DecisionsBench;
import org.stepwell.bench.GroupsBench;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Benchmarks, one JSON line for each measure; what is to be read stands on the error stream. */
@Command(name = "bench", mixinStandardHelpOptions = true, description = {
        "Runs benchmarks and prints one JSON line for each measure.",
        "decisions: suggestions against the known truth of simulated classrooms.",
        "groups: time to form groups and distance from the best, 25 and 40 children.",
        "faults: a random campaign of faults at the Table; nothing may be lost or doubled (needs a browser).",
        "table: from one tap to the visible confirmation, and the weight of the page (needs a browser)."})
final class BenchCommand implements Callable<Integer> {
    private static final String DECISIONS = "decisions";
    private static final String GROUPS = "groups";

    @Spec
    private CommandSpec spec;
    @Parameters(arity = "0..1", paramLabel = "NAME", defaultValue = DECISIONS,
            description = "decisions (the default), groups, faults, table")
    private String name;
    @Option(names = "--quick", description = "few classrooms, for a first look")
    private boolean quick;
    @Option(names = "--seed", paramLabel = "S", defaultValue = "1", description = "seed (${DEFAULT-VALUE})")
    private long seed;
    @Option(names = "--unseen", description = "decisions on families of another simulation")
    private boolean unseen;
    @Option(names = "--drawn", description = "decisions on families drawn by the seed, so that nobody has looked at them")
    private boolean drawn;
    @Option(names = "--count", paramLabel = "N", defaultValue = "0", description = "classrooms of each kind; 0: as usual")
    private int count;

    @Override
    public Integer call() {
        if (name.equals("faults") || name.equals("table")) {
            throw new ParameterException(spec.commandLine(), "bench " + name + " drives a browser with what the tests are "
                    + "built with, so the program alone cannot run it; run ./stepwell bench " + name + " in the sources");
        }
        if (!name.equals(DECISIONS) && !name.equals(GROUPS)) {
            throw new ParameterException(spec.commandLine(), "bench \"" + name + "\" is not one of " + DECISIONS + ", "
                    + GROUPS + ", faults, table");
        }
        if ((unseen || drawn) && !name.equals(DECISIONS)) {
            throw new ParameterException(spec.commandLine(), "--unseen and --drawn go with " + DECISIONS + " only");
        }
        if (unseen && drawn) {
            throw new ParameterException(spec.commandLine(), "--unseen or --drawn, not both");
        }
        if (count < 0) {
            throw new ParameterException(spec.commandLine(), "--count needs 0 or more, not " + count);
        }
        if (name.equals(GROUPS)) {
            GroupsBench.run(seed, quick, count, System.out);
            return 0;
        }
        DecisionsBench.run(families(), seed, quick, count, System.out);
        return 0;
    }

    private DecisionsBench.Set families() {
        if (drawn) {
            return DecisionsBench.Set.DRAWN;
        }
        return unseen ? DecisionsBench.Set.UNSEEN : DecisionsBench.Set.REPORTED;
    }
}
