package org.stepwell.review.ui;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar.Break;
import org.stepwell.core.problem.Problem;
import org.stepwell.core.progression.Progression;
import org.stepwell.observation.ObservationCsv;
import org.stepwell.observation.ObservationService;
import org.stepwell.observation.ObservationService.Foresight;
import org.stepwell.observation.ObservationService.Outcome;
import org.stepwell.observation.ObservationService.Taken;
import org.stepwell.pacing.CalendarCsv;
import org.stepwell.pacing.PacingCsv;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.platform.csv.CsvProblem;
import org.stepwell.platform.csv.Parsed;
import org.stepwell.platform.ui.Words;
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
        ROSTER, PROGRESSION, PACING, CALENDAR, OBSERVATIONS
    }

    /**
     * What a dry run found.
     *
     * @param good rows that can be taken
     * @param problems every bad row, and what is wrong with the file as such
     * @param remarks what is not wrong but good to know
     * @param take stores the good rows and says line by line what was done
     */
    record DryRun(int good, List<CsvProblem> problems, List<String> remarks, Supplier<List<String>> take) {}

    /** Reads a file of any kind but a progression, which is two files. */
    DryRun read(Kind kind, Classroom room, byte[] file) {
        return switch (kind) {
            case ROSTER -> roster(room, RosterCsv.read(file));
            case PACING -> pacing(room.classId(), PacingCsv.read(file));
            case CALENDAR -> {
                Parsed<Break> read = CalendarCsv.read(file);
                yield dryRun(read, List.of(), List.of(), rows -> {
                    pacing.importCalendar(room.classId(), rows);
                    return List.of(say("calendar.taken", rows.size()));
                });
            }
            case OBSERVATIONS -> observations(ObservationCsv.read(file));
            case PROGRESSION -> throw new IllegalArgumentException(kind.name());
        };
    }

    /** Reads a progression. */
    DryRun readProgression(byte[] skills, byte[] phrases) {
        return dryRun(ProgressionCsv.read(skills, phrases), List.of(), List.of(), rows -> {
            Progression progression = rows.getFirst();
            return List.of(say("progression.taken", progression.code(),
                    Integer.toString(progressions.importProgression(progression))));
        });
    }

    /** Whether a file is the one with skills, by its first line. */
    static boolean isSkills(byte[] file) {
        String start = new String(file, 0, Math.min(file.length, 400), StandardCharsets.UTF_8);
        return start.lines().findFirst().orElse("").contains("needs");
    }

    private DryRun roster(Classroom room, Parsed<RosterRow> read) {
        Set<UUID> mine = roster.children().stream().map(ChildRow::childId).collect(Collectors.toSet());
        List<@Nullable CsvProblem> refused = new ArrayList<>();
        for (int i = 0; i < read.rows().size(); i++) {
            boolean foreign = roster.idByKey(read.rows().get(i).child()).filter(id -> !mine.contains(id)).isPresent();
            refused.add(foreign ? new CsvProblem(read.lines().get(i), "child",
                    Problem.of("child.elsewhere", read.rows().get(i).child())) : null);
        }
        long elsewhere = read.rows().stream().filter(r -> !r.className().isEmpty()
                && !r.className().equals(room.name())).count();
        return dryRun(read, refused, elsewhere == 0 ? List.of()
                : List.of(say("roster.elsewhere", elsewhere, room.name())),
                rows -> List.of(say("roster.taken", roster.importRoster(room.classId(), rows), room.name())));
    }

    private DryRun pacing(UUID classId, Parsed<PacingRow> read) {
        UUID unit = pacing.unit(classId).map(UnitInHand::unitId).orElse(null);
        if (unit == null) {
            return new DryRun(0, List.of(new CsvProblem(0, "", Problem.of("pacing.no-unit"))), List.of(), List::of);
        }
        Progression progression = progressions.ofClass(classId);
        String unknown = read.rows().stream().map(PacingRow::skill).distinct()
                .filter(skill -> progression.skill(skill).isEmpty()).sorted().collect(Collectors.joining(", "));
        return dryRun(read, List.of(), unknown.isEmpty() ? List.of() : List.of(say("pacing.unknown", unknown)),
                rows -> {
                    pacing.importPacing(classId, unit, rows);
                    return List.of(say("pacing.taken", rows.size()));
                });
    }

    private DryRun observations(Parsed<Look> read) {
        List<Foresight> foreseen = observations.foresee(read.rows());
        List<@Nullable CsvProblem> refused = new ArrayList<>();
        for (int i = 0; i < foreseen.size(); i++) {
            long line = read.lines().get(i);
            Look look = read.rows().get(i);
            refused.add(switch (foreseen.get(i)) {
                case UNKNOWN_CHILD -> new CsvProblem(line, "child", Problem.of("look.no-child-roster", look.child()));
                case OTHER_CONTENT -> new CsvProblem(line, "id", Problem.of("look.other-content", look.id()));
                case NEW, THERE, WAITS -> null;
            });
        }
        List<String> remarks = new ArrayList<>();
        long there = foreseen.stream().filter(f -> f == Foresight.THERE).count();
        if (there > 0) {
            remarks.add(say("look.there", there));
        }
        long waits = foreseen.stream().filter(f -> f == Foresight.WAITS).count();
        if (waits > 0) {
            remarks.add(say("look.waits", waits));
        }
        return dryRun(read, refused, remarks, rows -> told(rows, observations.record(rows, false)));
    }

    private static List<String> told(List<Look> looks, List<Taken> taken) {
        Map<Outcome, Long> counts = taken.stream().collect(Collectors.groupingBy(Taken::outcome,
                Collectors.counting()));
        List<String> said = new ArrayList<>(List.of(say("look.taken", counts.getOrDefault(Outcome.STORED, 0L),
                counts.getOrDefault(Outcome.DUPLICATE, 0L), counts.getOrDefault(Outcome.REFUSED, 0L))));
        for (int i = 0; i < taken.size(); i++) {
            if (taken.get(i).outcome() == Outcome.REFUSED) {
                said.add(say("look.refused", looks.get(i).id(),
                        Words.told(Objects.requireNonNull(taken.get(i).reason()))));
            }
        }
        return said;
    }

    private static String say(String key, Object... gaps) {
        return Words.of("files").say(key, gaps);
    }

    /** @param refused for each row what the store would say against it, or {@code null}; empty = nothing */
    private static <T> DryRun dryRun(Parsed<T> read, List<@Nullable CsvProblem> refused, List<String> remarks,
            Function<List<T>, List<String>> take) {
        List<T> good = new ArrayList<>();
        List<CsvProblem> problems = new ArrayList<>(read.problems());
        for (int i = 0; i < read.rows().size(); i++) {
            CsvProblem problem = refused.isEmpty() ? null : refused.get(i);
            if (problem == null) {
                good.add(read.rows().get(i));
            } else {
                problems.add(problem);
            }
        }
        problems.sort(Comparator.comparingLong(CsvProblem::line));
        List<String> all = new ArrayList<>(remarks);
        if (!read.unknownColumns().isEmpty()) {
            all.add(say("unknown-columns", String.join(", ", read.unknownColumns())));
        }
        return new DryRun(good.size(), problems, all, () -> take.apply(List.copyOf(good)));
    }

    /** The files of a class as they stand, by name; what is not there yet is missing. */
    Map<String, Supplier<String>> exports(Classroom room) {
        UUID id = room.classId();
        Map<String, Supplier<String>> files = new LinkedHashMap<>();
        files.put("roster.csv", () -> RosterCsv.write(roster.export(id)));
        files.put("skills.csv", () -> ProgressionCsv.writeSkills(progressions.ofClass(id)));
        files.put("phrases.csv", () -> ProgressionCsv.writePhrases(progressions.ofClass(id)));
        @Nullable UnitInHand unit = pacing.unit(id).orElse(null);
        if (unit != null) {
            files.put("pacing.csv", () -> PacingCsv.write(unit.pacing().rows()));
            files.put("calendar.csv", () -> CalendarCsv.write(unit.calendar().breaks()));
        }
        files.put("observations.csv", () -> ObservationCsv.write(observations.fileOfClass(id)));
        return files;
    }
}
