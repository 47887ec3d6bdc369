package org.stepwell.cli;

import java.io.PrintWriter;
import java.time.Clock;
import java.util.concurrent.Callable;
import org.springframework.boot.logging.LoggingSystem;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.sample.SampleRemoval;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The invented sample class, from the terminal of the machine; works beside a running server and without one. */
@Command(name = "sample", mixinStandardHelpOptions = true, subcommands = SampleCommand.Remove.class,
        description = "The invented sample class.")
final class SampleCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do: sample remove --yes");
    }

    /** Takes the sample out. */
    @Command(name = "remove", mixinStandardHelpOptions = true, description = {
            "Removes the sample class for good: its children, looks, decisions and sign-ins, from every table.",
            "Schools of your own are not touched. It does not come back by itself; to see it again, start on another"
                    + " STEPWELL_HOME."})
    static final class Remove implements Callable<Integer> {
        @Spec
        private CommandSpec spec;
        @Option(names = "--yes", description = "really do it; there is no way back")
        private boolean yes;

        @Override
        public Integer call() {
            if (!yes) {
                throw new ParameterException(spec.commandLine(),
                        "This removes the sample class for good. To do it: sample remove --yes");
            }
            LoggingSystem.get(SampleCommand.class.getClassLoader()).beforeInitialize();
            PrintWriter out = spec.commandLine().getOut();
            try (OpenStore store = OpenStore.join(Settings.from(System::getenv), Clock.systemUTC())) {
                SampleRemoval removal = SampleRemoval.over(store);
                if (!removal.ready()) {
                    throw new StartProblem(
                            "The store has no tables yet. Start it once by ./stepwell, then try again.");
                }
                if (removal.there()) {
                    out.println("The sample class is removed, " + removal.remove() + " rows. Its sign-ins no longer"
                            + " work, and open screens of theirs end.");
                } else {
                    out.println("There is no sample class in this store. Nothing was removed.");
                }
                out.flush();
            }
            return 0;
        }
    }
}
