package org.stepwell.cli;

import java.io.PrintWriter;
import java.time.Clock;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.logging.LoggingSystem;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;
import org.stepwell.platform.store.HomeSecrets;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.platform.store.StoreRewrite;
import org.stepwell.records.Erasure;
import org.stepwell.records.ErasureTarget;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Erasure of all records on a child, from the terminal of the machine. */
@Command(name = "erase", mixinStandardHelpOptions = true, subcommands = {EraseCommand.Child.class,
    EraseCommand.Finish.class}, description = {"Erases all records on a child for good.",
        "\"erase child\" takes it out of every table; \"erase finish\" then clears what the files still hold."})
final class EraseCommand implements Runnable {
    private static final String OWN_SERVER = """
            What your own PostgreSQL still holds of erased children, and how to clear it:
              dead rows     run as the owner of the database: VACUUM (FULL, ANALYZE);
              old log files of transactions: SELECT pg_switch_wal(); CHECKPOINT; they are reused from then on. Archived
                            ones go by your archive's own rules.
              server log    statements that failed may be in it with their words: delete it.
              replicas      follow by themselves; a delayed or stopped one does not.
              backups       every backup made before still holds the child: delete it or let it expire, and erase the
                            child again after restoring one.
            Disk blocks that were freed can be read from a raw disk until they are written again; encrypt the disk.""";

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do: erase child SCHOOL-ID, or erase finish");
    }

    /** Takes one child out of every table. */
    @Command(name = "child", mixinStandardHelpOptions = true, description = {
            "Takes a child out of every table: looks, decisions, plans, notes, marks, places in groups, all of it.",
            "Without --yes it only counts. Works beside a running server; tablets lose the child at their next visit,",
            "and looks at it that come later are refused. There is no way back."})
    static final class Child implements Callable<Integer> {
        @Spec
        private CommandSpec spec;
        @Parameters(paramLabel = "SCHOOL-ID", description = "the school's own id of the child, as in the roster")
        private String schoolKey;
        @Option(names = "--school", paramLabel = "NAME", description = "needed when two schools have the id")
        private @Nullable String school;
        @Option(names = "--why", paramLabel = "WHY", completionCandidates = Reasons.class,
                description = "kept in the proof: ${COMPLETION-CANDIDATES}")
        private @Nullable String why;
        @Option(names = "--yes", description = "really do it; there is no way back")
        private boolean yes;

        @Override
        public Integer call() {
            Erasure.@Nullable Why reason = why == null ? null : Arrays.stream(Erasure.Why.values())
                    .filter(w -> w.code().equals(why)).findFirst().orElseThrow(() -> new ParameterException(
                            spec.commandLine(), "--why \"" + why + "\" is not one of " + String.join(", ", new Reasons())));
            if (yes && reason == null) {
                throw new ParameterException(spec.commandLine(),
                        "Say why, for the proof: --why " + String.join(" or ", new Reasons()));
            }
            LoggingSystem.get(EraseCommand.class.getClassLoader()).beforeInitialize();
            Settings settings = Settings.from(System::getenv);
            try (OpenStore store = OpenStore.join(settings, Clock.systemUTC())) {
                Erasure erasure = Erasure.over(store, HomeSecrets.of(settings));
                if (!erasure.ready()) {
                    throw new StartProblem("The store has no tables of this version yet. Start it once by ./stepwell, "
                            + "then try again.");
                }
                return erase(erasure, only(erasure.withKey(schoolKey)), reason, settings.database() != null);
            }
        }

        private ErasureTarget only(List<ErasureTarget> found) {
            List<ErasureTarget> fitting = found.stream().filter(t -> school == null
                    || Arrays.asList(t.schools().split(", ")).contains(school)).toList();
            if (fitting.isEmpty()) {
                throw new BadFiles("No child has the id \"" + schoolKey + "\"" + (school == null ? "" : " at " + school)
                        + ". Nothing was erased.");
            }
            if (fitting.size() > 1) {
                throw new BadFiles("Children of several schools have the id \"" + schoolKey + "\": "
                        + fitting.stream().map(ErasureTarget::schools).collect(Collectors.joining("; "))
                        + ". Say which one by --school NAME. Nothing was erased.");
            }
            return fitting.getFirst();
        }

        private int erase(Erasure erasure, ErasureTarget target, Erasure.@Nullable Why reason, boolean ownServer) {
            PrintWriter out = spec.commandLine().getOut();
            Erasure.Preview preview = erasure.preview(target);
            if (!yes || reason == null) {
                out.println("Would go, rows by table:");
                preview.rows().forEach((table, rows) -> out.println("  " + table + " " + rows));
                mentions(out, preview.mentions());
                out.println("Nothing was erased. To do it: erase child " + schoolKey + " --why WHY --yes");
                out.flush();
                return 0;
            }
            int rows = erased(erasure, target, reason);
            out.println("Erased, " + rows + " rows. What is left is the proof that it happened; the record of access"
                    + " names nobody any more.");
            mentions(out, preview.mentions());
            out.println(ownServer ? OWN_SERVER : "Files of the store still hold the old bytes. When the server is"
                    + " stopped, run: erase finish");
            out.flush();
            return 0;
        }

        private static int erased(Erasure erasure, ErasureTarget target, Erasure.Why reason) {
            try {
                return erasure.erase(target, reason, null);
            } catch (Refused held) {
                throw new BadFiles(String.valueOf(held.getMessage()));
            }
        }

        private static void mentions(PrintWriter out, Map<String, Integer> mentions) {
            if (!mentions.isEmpty()) {
                out.println("Rows on others with this given name in them; read whom they mean, no program can tell:");
                mentions.forEach((table, rows) -> out.println("  " + table + " " + rows));
            }
        }
    }

    /** Clears the files. */
    @Command(name = "finish", mixinStandardHelpOptions = true, description = {
            "Copies the embedded store into a newly made one and removes the old files and PostgreSQL's logs, so that",
            "nothing erased is left in the bytes of the home. The server has to be stopped. A cut at any moment leaves",
            "a whole store. On an own PostgreSQL it says what remains there and how to clear it."})
    static final class Finish implements Callable<Integer> {
        @Spec
        private CommandSpec spec;

        @Override
        public Integer call() {
            LoggingSystem.get(EraseCommand.class.getClassLoader()).beforeInitialize();
            PrintWriter out = spec.commandLine().getOut();
            Settings settings = Settings.from(System::getenv);
            if (settings.database() != null) {
                out.println(OWN_SERVER);
            } else {
                long rows = StoreRewrite.run(settings, Clock.systemUTC());
                out.println("The store is written anew, " + rows + " rows; the old files are gone. Backups and copies"
                        + " made before still hold what was erased: delete them. Freed disk blocks can be read from a"
                        + " raw disk until they are written again; encrypt the disk.");
            }
            out.flush();
            return 0;
        }
    }

    /** The reasons as they are written. */
    static final class Reasons implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(Erasure.Why.values()).map(Erasure.Why::code).iterator();
        }
    }
}
