package org.stepwell.review.ui;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.progression.Progression;
import org.stepwell.observation.ObservationCsv;
import org.stepwell.observation.ObservationService;
import org.stepwell.observation.ObservationService.Outcome;
import org.stepwell.observation.ObservationService.Taken;
import org.stepwell.pacing.CalendarCsv;
import org.stepwell.pacing.PacingCsv;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.platform.csv.CsvProblem;
import org.stepwell.platform.csv.Parsed;
import org.stepwell.progression.ProgressionCsv;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterCsv;
import org.stepwell.roster.RosterRow;
import org.stepwell.roster.RosterService;

/** Reads a file for a class without storing anything, says what it found, and stores it only when told to. */
@Component
class FileIntake {
    private final RosterService roster;
    private final ProgressionService progressions;
    private final PacingService pacing;
    private final ObservationService observations;

    FileIntake(RosterService roster, ProgressionService progressions, PacingService pacing,
            ObservationService observations) {
        this.roster = roster;
        this.progressions = progressions;
        this.pacing = pacing;
        this.observations = observations;
    }

    /** Files a school has. */
    enum Kind {
        ROSTER("roster.csv"), PROGRESSION("skills.csv and phrases.csv"), PACING("pacing.csv"),
        CALENDAR("calendar.csv"), OBSERVATIONS("observations.csv");

        private final String file;

        Kind(String file) {
            this.file = file;
        }

        String file() {
            return file;
        }
    }

    /**
     * What a dry run found.
     *
     * @param good rows that can be taken
     * @param problems every bad row, and what is wrong with the file as such
     * @param remarks what is not wrong but good to know
     * @param take stores the good rows and says what was done
     */
    record DryRun(int good, List<CsvProblem> problems, List<String> remarks, Supplier<String> take) {}

    /** Reads a file of any kind but a progression, which is two files. */
    DryRun read(Kind kind, Classroom room, byte[] file) {
        return switch (kind) {
            case ROSTER -> roster(room, RosterCsv.read(file));
            case PACING -> pacing(room.classId(), file);
            case CALENDAR -> {
                Parsed<org.stepwell.core.pacing.SchoolCalendar.Break> read = CalendarCsv.read(file);
                yield dryRun(read, List.of(), () -> {
                    pacing.importCalendar(room.classId(), read.rows());
                    return read.rows().size() + " breaks stand in for those before.";
                });
            }
            case OBSERVATIONS -> observations(ObservationCsv.read(file));
            case PROGRESSION -> throw new IllegalArgumentException("a progression is two files");
        };
    }

    /** Reads a progression. */
    DryRun readProgression(byte[] skills, byte[] phrases) {
        Parsed<Progression> read = ProgressionCsv.read(skills, phrases);
        return dryRun(read, List.of(), () -> {
            Progression progression = read.rows().getFirst();
            return "Progression " + progression.code() + ", version " + progressions.importProgression(progression)
                    + ", holds now.";
        });
    }

    /** Whether a file is the one with skills, by its first line. */
    static boolean isSkills(byte[] file) {
        String start = new String(file, 0, Math.min(file.length, 400), StandardCharsets.UTF_8);
        return start.lines().findFirst().orElse("").contains("needs");
    }

    private DryRun roster(Classroom room, Parsed<RosterRow> read) {
        long elsewhere = read.rows().stream().filter(r -> !r.className().isEmpty()
                && !r.className().equals(room.name())).count();
        return dryRun(read, elsewhere == 0 ? List.of() : List.of(elsewhere + " rows name another class; they would "
                + "be taken into " + room.name() + " all the same."), () -> roster.importRoster(room.classId(),
                        read.rows()) + " rows taken into " + room.name() + ".");
    }

    private DryRun pacing(UUID classId, byte[] file) {
        var read = PacingCsv.read(file);
        UUID unit = pacing.unit(classId).map(UnitInHand::unitId).orElse(null);
        if (unit == null) {
            return new DryRun(0, List.of(new CsvProblem(0, "", "the class has no unit yet; start one below, then "
                    + "choose the file again")), List.of(), () -> "");
        }
        return dryRun(read, List.of(), () -> {
            pacing.importPacing(classId, unit, read.rows());
            return read.rows().size() + " rows stand in for the pacing before.";
        });
    }

    private DryRun observations(Parsed<Look> read) {
        Set<String> known = roster.children().stream().map(ChildRow::schoolKey).collect(Collectors.toSet());
        Map<String, Integer> unknown = new HashMap<>();
        read.rows().stream().filter(l -> !known.contains(l.child())).forEach(l -> unknown.merge(l.child(), 1,
                Integer::sum));
        List<String> remarks = new ArrayList<>();
        unknown.keySet().stream().sorted().forEach(child -> remarks.add("No child \"" + child
                + "\" is in a class you see now; its looks (" + unknown.get(child)
                + ") may be refused. Take the roster in first."));
        return dryRun(read, remarks, () -> told(read.rows(), observations.record(read.rows(), false)));
    }

    private static String told(List<Look> looks, List<Taken> taken) {
        Map<Outcome, Long> counts = taken.stream().collect(Collectors.groupingBy(Taken::outcome,
                Collectors.counting()));
        StringBuilder said = new StringBuilder(counts.getOrDefault(Outcome.STORED, 0L) + " looks stored, "
                + counts.getOrDefault(Outcome.DUPLICATE, 0L) + " were there already, "
                + counts.getOrDefault(Outcome.REFUSED, 0L) + " refused.");
        for (int i = 0; i < taken.size(); i++) {
            if (taken.get(i).outcome() == Outcome.REFUSED) {
                said.append("\nLook ").append(looks.get(i).id()).append(": ").append(taken.get(i).reason());
            }
        }
        return said.toString();
    }

    private static <T> DryRun dryRun(Parsed<T> read, List<String> remarks, Supplier<String> take) {
        List<String> all = new ArrayList<>(remarks);
        if (!read.unknownColumns().isEmpty()) {
            all.add("Columns not known here, left aside: " + String.join(", ", read.unknownColumns()) + ".");
        }
        return new DryRun(read.rows().size(), read.problems(), all, take);
    }

    /** The files of a class as they stand, by name; what is not there yet is missing. */
    Map<String, Supplier<String>> exports(Classroom room) {
        UUID id = room.classId();
        Map<String, Supplier<String>> files = new java.util.LinkedHashMap<>();
        files.put("roster.csv", () -> RosterCsv.write(roster.export(id)));
        files.put("skills.csv", () -> ProgressionCsv.writeSkills(progressions.ofClass(id)));
        files.put("phrases.csv", () -> ProgressionCsv.writePhrases(progressions.ofClass(id)));
        @Nullable UnitInHand unit = pacing.unit(id).orElse(null);
        if (unit != null) {
            files.put("pacing.csv", () -> PacingCsv.write(unit.pacing().rows()));
            files.put("calendar.csv", () -> CalendarCsv.write(unit.calendar().breaks()));
        }
        files.put("observations.csv", () -> ObservationCsv.write(observations.ofClass(id)));
        return files;
    }
}
