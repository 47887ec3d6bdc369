package org.stepwell.cli;

import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import org.stepwell.Application;
import org.stepwell.platform.ServerLife;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** The commands. Usage errors end with 2 and one line, bad data with 1 and every bad row. */
@Command(name = "stepwell", mixinStandardHelpOptions = true, version = "stepwell 0.1.0",
        description = "Looks at the teacher table, gathered per skill, for decisions that can be checked.",
        footer = {"", "Without a command the server starts. \"stepwell test\" runs every test."},
        subcommands = {Cli.Start.class, ReplayCommand.class, TrendCommand.class, ItemReportCommand.class,
            GroupsCommand.class, AdultCommand.class, SampleCommand.class, EraseCommand.class,
            VerifyCommand.class, BenchCommand.class})
public final class Cli implements Runnable {
    @Spec
    private CommandSpec spec;

    /** Runs a command; only the server returns before its work is done. */
    public static void run(String... arguments) {
        int code = line().execute(arguments);
        if (code != 0) {
            System.exit(code);
        }
    }

    /** The command line, for running it in a test without ending the program. */
    public static CommandLine line() {
        return new CommandLine(new Cli())
                // Results are files that happen to be printed: UTF-8 whatever the terminal's own charset.
                .setOut(new PrintWriter(new OutputStreamWriter(System.out, StandardCharsets.UTF_8), true))
                .registerConverter(LocalDate.class, Cli::date)
                .setParameterExceptionHandler((wrong, arguments) -> {
                    PrintWriter err = wrong.getCommandLine().getErr();
                    err.println(String.valueOf(wrong.getMessage()).lines().findFirst().orElse("")
                            + " (see " + wrong.getCommandLine().getCommandSpec().qualifiedName() + " --help)");
                    err.flush();
                    return CommandLine.ExitCode.USAGE;
                })
                .setExecutionExceptionHandler((failed, command, result) -> {
                    if (failed instanceof BadFiles || failed instanceof StartProblem) {
                        command.getErr().println(failed.getMessage());
                        command.getErr().flush();
                        return CommandLine.ExitCode.SOFTWARE;
                    }
                    throw failed;
                });
    }

    private static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException wrong) {
            throw new TypeConversionException("\"" + text + "\" is not a date like 2026-03-09");
        }
    }

    @Override
    public void run() {
        new Start().run();
    }

    /** Serves until told to stop. */
    @Command(name = "start", mixinStandardHelpOptions = true,
            description = "Starts the server and prints its address; stops on Ctrl-C.")
    static final class Start implements Runnable {
        @Override
        public void run() {
            ServerLife.start(Application.class, Settings.from(System::getenv), Clock.systemUTC(), System.out);
        }
    }
}
