package org.stepwell.cli;

import java.time.Clock;
import java.util.Arrays;
import java.util.Iterator;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.function.Function;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.logging.LoggingSystem;
import org.springframework.dao.DataAccessException;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.roster.Invitations;
import org.stepwell.roster.Invitations.Invitation;
import org.stepwell.roster.Invitations.Role;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Accounts of adults, from the terminal of the machine; works beside a running server and without one. */
@Command(name = "adult", mixinStandardHelpOptions = true, subcommands = {AdultCommand.Add.class,
    AdultCommand.Reset.class}, description = {"Lets adults in.",
        "Prints a one-time password, good for seven days and for choosing an own one at the sign-in page."})
final class AdultCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do: adult add NAME, or adult reset NAME");
    }

    /** Makes an account. */
    @Command(name = "add", mixinStandardHelpOptions = true, description = {
            "Makes an account and prints its one-time password.",
            "The first adult of a school brings it along: --school NAME --time-zone ZONE --class NAME --new-class.",
            "A new school is a district of its own: nothing crosses from one to another."})
    static final class Add implements Callable<Integer> {
        @Spec
        private CommandSpec spec;
        @Parameters(paramLabel = "SIGN-IN", description = "name to sign in with, such as ana@hill")
        private String signIn;
        @Option(names = "--name", required = true, paramLabel = "NAME", description = "shown beside looks")
        private String name;
        @Option(names = "--role", paramLabel = "ROLE", defaultValue = "teacher", completionCandidates = Roles.class,
                description = "${COMPLETION-CANDIDATES} (${DEFAULT-VALUE})")
        private String role;
        @Option(names = "--class", paramLabel = "NAME", description = "class to work in; a lead has none")
        private @Nullable String className;
        @Option(names = "--new-class", description = "make the class when the school has none of that name")
        private boolean newClass;
        @Option(names = "--school", paramLabel = "NAME", description = "needed when there is not exactly one")
        private @Nullable String school;
        @Option(names = "--time-zone", paramLabel = "ZONE", description = "of a school to be made: America/Chicago")
        private @Nullable String timeZone;

        @Override
        public Integer call() {
            Role chosen = Arrays.stream(Role.values()).filter(r -> code(r).equals(role)).findFirst().orElseThrow(
                    () -> new ParameterException(spec.commandLine(), "--role \"" + role + "\" is not one of "
                            + String.join(", ", new Roles())));
            print(spec, invitations -> invitations.add(
                    new Invitation(signIn, name, chosen, className, newClass, school, timeZone)));
            return 0;
        }
    }

    /** Sets a new one-time password. */
    @Command(name = "reset", mixinStandardHelpOptions = true,
            description = "Sets a new one-time password and prints it; the former password ends.")
    static final class Reset implements Callable<Integer> {
        @Spec
        private CommandSpec spec;
        @Parameters(paramLabel = "SIGN-IN", description = "name of the account")
        private String signIn;

        @Override
        public Integer call() {
            print(spec, invitations -> invitations.reset(signIn));
            return 0;
        }
    }

    /** The roles as they are written. */
    static final class Roles implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(Role.values()).map(AdultCommand::code).iterator();
        }
    }

    private static String code(Role role) {
        return role.name().toLowerCase(Locale.ROOT);
    }

    private static void print(CommandSpec spec, Function<Invitations, String> work) {
        // Without a server nobody has said where log lines go, and they would go between the results.
        LoggingSystem.get(AdultCommand.class.getClassLoader()).beforeInitialize();
        Clock clock = Clock.systemUTC();
        try (OpenStore store = OpenStore.join(Settings.from(System::getenv), clock)) {
            DataSource source = store.runTimeSource();
            if (!AccountService.over(source, clock).ready()) {
                throw new StartProblem("The store has no tables yet. Start it once by ./stepwell, then try again.");
            }
            spec.commandLine().getOut().println(work.apply(new Invitations(source, clock)));
            spec.commandLine().getOut().flush();
        } catch (IllegalArgumentException refused) {
            throw new BadFiles(String.valueOf(refused.getMessage()));
        } catch (DataAccessException away) {
            throw new StartProblem("The store cannot be used: " + away.getMostSpecificCause().getMessage(), away);
        }
    }
}
