package org.stepwell.sample;

import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.tier.ChildState.Dose;
import org.stepwell.core.tier.Tier;
import org.stepwell.observation.ObservationCsv;
import org.stepwell.observation.ObservationService;
import org.stepwell.observation.ObservationService.Outcome;
import org.stepwell.observation.ObservationService.Taken;
import org.stepwell.pacing.CalendarCsv;
import org.stepwell.pacing.PacingCsv;
import org.stepwell.pacing.PacingService;
import org.stepwell.platform.csv.CsvRow;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.security.DistrictScope;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.progression.ProgressionCsv;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterCsv;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.TierService;

/** Puts the sample class into an empty store, through the imports a teacher uses, as the sample teacher. */
@Service
class SampleLoader {
    static final int DISTRICT = 1;

    private final RosterService roster;
    private final ProgressionService progressions;
    private final PacingService pacing;
    private final ObservationService observations;
    private final TierService tiers;
    private final Access access;
    private final TransactionTemplate transaction;
    private final Clock clock;

    SampleLoader(RosterService roster, ProgressionService progressions, PacingService pacing,
            ObservationService observations, TierService tiers, Access access, TransactionTemplate transaction,
            Clock clock) {
        this.roster = roster;
        this.progressions = progressions;
        this.pacing = pacing;
        this.observations = observations;
        this.tiers = tiers;
        this.access = access;
        this.transaction = transaction;
        this.clock = clock;
    }

    private record Grown(String signIn, String name, String role) {}

    private record Row(List<String> cells) {}

    /** Loads everything in one transaction; gives the adults by sign-in name. */
    Map<String, UUID> load() {
        SampleFiles files = new SampleFiles(clock.instant());
        return DistrictScope.in(DISTRICT, () -> transaction.execute(status -> load(files)));
    }

    private Map<String, UUID> load(SampleFiles files) {
        UUID school = UUID.randomUUID();
        LocalDate start = files.anchor().minusYears(1);
        UUID room = roster.found(DISTRICT, "Sample", true, files.property("school"), files.property("time_zone"),
                files.property("class"), files.property("grade"), school);
        Map<String, UUID> adults = new HashMap<>();
        SignedIn teacher = null;
        for (Grown grown : adults()) {
            UUID id = roster.addAdult(DISTRICT, school, room, grown.signIn(), grown.name(), grown.role(), start);
            adults.put(grown.signIn(), id);
            if (grown.role().equals("teacher")) {
                teacher = new SignedIn(DISTRICT, id, school, grown.signIn(), grown.name(), files.zone(), false);
            }
        }
        if (teacher == null) {
            throw new IllegalStateException("sample-class/adults.csv has no teacher");
        }
        SecurityContextHolder.getContext().setAuthentication(
                UsernamePasswordAuthenticationToken.authenticated(teacher, null, List.of()));
        try {
            asTeacher(files, room, adults);
        } finally {
            SecurityContextHolder.clearContext();
        }
        return adults;
    }

    private void asTeacher(SampleFiles files, UUID room, Map<String, UUID> adults) {
        roster.importRoster(room, SampleFiles.clean("roster.csv", RosterCsv.read(SampleFiles.bytes("roster.csv")))
                .stream().map(files::moved).toList());
        progressions.importProgression(SampleFiles.clean("skills.csv", ProgressionCsv.read(
                SampleFiles.bytes("skills.csv"), SampleFiles.bytes("phrases.csv"))).getFirst());
        UUID unit = pacing.startUnit(room, files.property("progression"), files.property("unit"),
                files.moved(LocalDate.parse(files.property("unit_start"))));
        pacing.importPacing(room, unit, SampleFiles.clean("pacing.csv", PacingCsv.read(
                SampleFiles.bytes("pacing.csv"))).stream().map(files::moved).toList());
        pacing.importCalendar(room, SampleFiles.clean("calendar.csv", CalendarCsv.read(
                SampleFiles.bytes("calendar.csv"))).stream().map(files::moved).toList());
        List<Look> looks = SampleFiles.clean("observations.csv", ObservationCsv.read(
                SampleFiles.bytes("observations.csv"))).stream().map(files::moved).toList();
        List<Taken> taken = observations.record(looks, false);
        taken.stream().filter(t -> t.outcome() != Outcome.STORED).findFirst().ifPresent(t -> {
            throw new IllegalStateException("sample-class/observations.csv: " + t.reason());
        });
        decisions(files, unit);
        shares(files, adults);
    }

    private void decisions(SampleFiles files, UUID unit) {
        Map<String, UUID> children = new HashMap<>();
        roster.children().forEach((ChildRow child) -> children.put(child.schoolKey(), child.childId()));
        Map<String, Tier> inForce = new HashMap<>();
        for (Row row : rows("decisions.csv", List.of("as_of", "child", "tier", "reason"))) {
            Tier from = inForce.getOrDefault(row.cells().get(1), Tier.ON_LEVEL);
            Tier to = Tier.of(row.cells().get(2));
            tiers.takeOver(unit, children.get(row.cells().get(1)), files.moved(LocalDate.parse(row.cells().get(0))),
                    from, to, row.cells().get(3));
            inForce.put(row.cells().get(1), to);
        }
        for (Row row : rows("concerns.csv", List.of("child", "kind", "on"))) {
            tiers.recordConcern(children.get(row.cells().get(0)), row.cells().get(1),
                    files.moved(LocalDate.parse(row.cells().get(2))), "");
        }
        for (Row row : rows("dose.csv", List.of("child", "planned", "given", "missed_by_school", "missed_by_child"))) {
            tiers.recordDose(unit, children.get(row.cells().get(0)), files.anchor(), new Dose(number(row, 1),
                    number(row, 2), number(row, 3), number(row, 4)));
        }
    }

    private void shares(SampleFiles files, Map<String, UUID> adults) {
        Map<String, UUID> children = new HashMap<>();
        roster.children().forEach((ChildRow child) -> children.put(child.schoolKey(), child.childId()));
        for (Row row : rows("grants.csv", List.of("adult", "child", "reason", "until_days"))) {
            access.grant(DISTRICT, adults.get(row.cells().get(0)), children.get(row.cells().get(1)),
                    row.cells().get(2), files.anchor().minusDays(14), files.anchor().plusDays(number(row, 3)));
        }
    }

    private static int number(Row row, int column) {
        return Integer.parseInt(row.cells().get(column));
    }

    private static List<Grown> adults() {
        return rows("adults.csv", List.of("sign_in", "name", "role")).stream()
                .map(row -> new Grown(row.cells().get(0), row.cells().get(1), row.cells().get(2))).toList();
    }

    private static List<Row> rows(String name, List<String> columns) {
        return SampleFiles.clean(name, CsvTable.read(SampleFiles.bytes(name), columns, List.of()).parse(
                (CsvRow row) -> new Row(columns.stream().map(row::text).toList()), row -> row));
    }
}
