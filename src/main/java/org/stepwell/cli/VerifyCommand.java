package org.stepwell.cli;

import java.io.PrintWriter;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import org.springframework.boot.logging.LoggingSystem;
import org.stepwell.integrity.Integrity;
import org.stepwell.platform.Settings;
import org.stepwell.platform.store.OpenStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Integrity of the store, from the terminal of the machine; works beside a running server and without one. */
@Command(name = "verify", mixinStandardHelpOptions = true, description = {
        "Checks that what the store holds is still what was written, and that its walls stand.",
        "Ends with 0 when all holds, with 1 and the ids of what does not. Changes nothing."})
final class VerifyCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        LoggingSystem.get(VerifyCommand.class.getClassLoader()).beforeInitialize();
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        List<Integrity.Answer> answers;
        try (OpenStore store = OpenStore.join(Settings.from(System::getenv), Clock.systemUTC())) {
            answers = Integrity.over(store).check();
        }
        boolean holds = true;
        for (Integrity.Answer answer : answers) {
            boolean good = answer.wrong().isEmpty();
            holds &= good;
            out.println((good ? "holds: " : "DOES NOT HOLD: ") + answer.question() + " (" + answer.looked() + ")");
            answer.wrong().forEach(id -> err.println("  " + id));
        }
        out.flush();
        err.flush();
        return holds ? 0 : 1;
    }
}
