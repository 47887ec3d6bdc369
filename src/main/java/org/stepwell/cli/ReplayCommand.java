package org.stepwell.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.pacing.SchoolCalendar.Break;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Replay;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.WhatIf.Decided;
import org.stepwell.observation.ObservationCsv;
import org.stepwell.pacing.CalendarCsv;
import org.stepwell.pacing.PacingCsv;
import org.stepwell.progression.ProgressionCsv;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Runs reviews over a history, without database or web. */
@Command(name = "replay", mixinStandardHelpOptions = true, description = {
        "Runs reviews over a history and writes suggestions.csv and estimates.csv.",
        "Each review knows only what is dated up to the end of its day; everybody starts on level."})
final class ReplayCommand implements Callable<Integer> {
    private static final int MOST_REVIEWS = 10_000;

    @Spec
    private CommandSpec spec;
    @Option(names = "--observations", required = true, paramLabel = "F", description = "observations.csv")
    private Path observations;
    @Option(names = "--pacing", required = true, paramLabel = "F", description = "pacing.csv")
    private Path pacing;
    @Option(names = "--calendar", paramLabel = "F", description = "calendar.csv; else breaks are seen from silence")
    private @Nullable Path calendar;
    @Option(names = "--from", paramLabel = "D", description = "day of the first review")
    private @Nullable LocalDate from;
    @Option(names = "--to", paramLabel = "D", description = "no review after this day")
    private @Nullable LocalDate to;
    @Option(names = "--every", paramLabel = "N", defaultValue = "7", description = "days between reviews (7)")
    private int every;
    @Option(names = "--on", split = ",", paramLabel = "D", description = "review on exactly these days instead")
    private @Nullable List<LocalDate> on;
    @Option(names = "--rules", paramLabel = "NAME|FILE", defaultValue = RuleFile.DEFAULT,
            description = "conventional, weighed or a file (${DEFAULT-VALUE})")
    private String rules;
    @Mixin
    private WhatIfOptions whatIf = new WhatIfOptions();
    @Option(names = "--skip-bad-rows", description = "take the good rows of a file with bad ones")
    private boolean skipBadRows;
    @Option(names = "--out", required = true, paramLabel = "DIR", description = "folder for the results")
    private Path out;

    @Override
    public Integer call() {
        SortedSet<LocalDate> days = days();
        InputFiles files = new InputFiles(spec.commandLine().getErr(), skipBadRows);
        List<Look> looks = files.read(observations, ObservationCsv::read);
        List<PacingRow> rows = files.read(pacing, PacingCsv::read);
        List<Break> breaks = calendar == null ? List.of() : files.read(calendar, CalendarCsv::read);
        List<Decided> decided = whatIf.decided(files);
        files.refuseIfBad();
        RuleFile asked = RulesOption.rules(spec, "--rules", rules);
        RuleFile tried = whatIf.tried(spec, asked);
        ClassSetting setting = new ClassSetting(shippedProgression(), new Pacing(rows), new SchoolCalendar(breaks),
                calendar != null);
        ReplayFiles results = new ReplayFiles(setting.progression());
        new Replay(setting, looks, asked, Parameters.shipped()).run(days, results::add);
        write("suggestions.csv", results.suggestions());
        write("estimates.csv", results.estimates());
        if (whatIf.asked()) {
            WhatIfOptions.Found found = WhatIfOptions.compare(setting, looks, decided, days, asked, tried);
            write("what_if.csv", found.csv());
            spec.commandLine().getOut().print(found.summary());
            spec.commandLine().getOut().flush();
        }
        return 0;
    }

    private SortedSet<LocalDate> days() {
        if (on != null && !on.isEmpty()) {
            return new TreeSet<>(on);
        }
        if (from == null || to == null) {
            throw new ParameterException(spec.commandLine(), "Say when to review: --from D --to D, or --on D,D");
        }
        if (every < 1) {
            throw new ParameterException(spec.commandLine(), "--every needs 1 or more days, not " + every);
        }
        if (to.isBefore(from)) {
            throw new ParameterException(spec.commandLine(), "--to " + to + " is before --from " + from);
        }
        List<LocalDate> days = new ArrayList<>();
        for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(every)) {
            days.add(day);
            if (days.size() > MOST_REVIEWS) {
                throw new ParameterException(spec.commandLine(), "more than " + MOST_REVIEWS + " reviews; check --to");
            }
        }
        return new TreeSet<>(days);
    }

    /** The progression that ships: its prerequisites and flags hold for the skill codes it knows. */
    private static Progression shippedProgression() {
        return ProgressionCsv.read(resource("skills.csv"), resource("phrases.csv")).rows().getFirst();
    }

    private static byte[] resource(String name) {
        try (var in = ReplayCommand.class.getResourceAsStream("/sample-class/" + name)) {
            return java.util.Objects.requireNonNull(in, name).readAllBytes();
        } catch (IOException failed) {
            throw new java.io.UncheckedIOException(failed);
        }
    }

    private void write(String name, String content) {
        try {
            Files.createDirectories(out);
            Files.writeString(out.resolve(name), content);
        } catch (IOException failed) {
            throw new BadFiles(out.resolve(name) + " cannot be written: " + failed.getMessage());
        }
    }
}
