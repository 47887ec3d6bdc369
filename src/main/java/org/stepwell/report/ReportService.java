package org.stepwell.report;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.progression.Progression;
import org.stepwell.observation.ObservationLine;
import org.stepwell.observation.ObservationService;
import org.stepwell.plan.PlanService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.FamilyRequestService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;

/** Gathers the report on a child, for whoever may see the child, and writes that down. */
@Service
@Transactional
public class ReportService {
    private final RosterService roster;
    private final TierService tiers;
    private final ObservationService observations;
    private final PlanService plans;
    private final AccessRecordService record;
    private final FamilyRequestService requests;
    private final CurrentAdult current;

    ReportService(RosterService roster, TierService tiers, ObservationService observations, PlanService plans,
            AccessRecordService record, FamilyRequestService requests, CurrentAdult current) {
        this.roster = roster;
        this.tiers = tiers;
        this.observations = observations;
        this.plans = plans;
        this.record = record;
        this.requests = requests;
        this.current = current;
    }

    /**
     * The report as of today. A note that names another child is left out and counted.
     *
     * @throws NotVisible when the child may not be seen
     */
    TeamReport report(UUID childId) {
        ChildRow child = roster.child(childId);
        ClassPicture picture = tiers.picture(child.classId());
        OneChild one = picture.children().stream().filter(c -> c.row().childId().equals(childId)).findFirst()
                .orElseThrow(NotVisible::new);
        List<Look> counting = observations.looks(childId).stream().filter(line -> line.replacedBy() == null
                && !line.waiting() && !line.look().withdrawn()).map(ObservationLine::look)
                .sorted(Comparator.comparing(Look::observedAt).thenComparing(Look::id)).toList();
        Set<String> others = roster.otherNames(childId);
        List<Look> clean = counting.stream().map(look -> names(look.note(), others) ? withoutNote(look) : look).toList();
        List<String> order = picture.progression().skills().stream().map(Progression.Skill::code).toList();
        String room = roster.classes().stream().filter(c -> c.classId().equals(child.classId())).map(Classroom::name)
                .findFirst().orElse("");
        boolean shared = plans.mayRead(childId);
        record.seen(childId, Seen.REPORT_PRINT);
        return new TeamReport(child.label(), room, current.get().name(), picture.day(), one.state().tier(),
                picture.progression(), picture.due(), one.picture().skills().values().stream()
                        .filter(s -> s.seen()).sorted(Comparator.comparingInt(s -> order.indexOf(s.skill()))).toList(),
                clean, (int) counting.stream().filter(look -> names(look.note(), others)).count(), roster.adults(),
                tiers.decisions(childId), one.state().open(), requests.statements(childId), shared, shared ? plans.plans(childId) : List.of());
    }

    private static boolean names(@Nullable String note, Set<String> others) {
        return note != null && others.stream().filter(name -> !name.isBlank()).anyMatch(name -> Pattern.compile(
                "(?<![\\p{L}\\p{N}])" + Pattern.quote(name.toLowerCase(Locale.ROOT)) + "(?![\\p{L}\\p{N}])")
                .matcher(Objects.requireNonNull(note).toLowerCase(Locale.ROOT)).find());
    }

    private static Look withoutNote(Look look) {
        return new Look(look.id(), look.observedAt(), look.child(), look.skill(), look.task(), look.step(), look.help(),
                look.kind(), look.observer(), look.tags(), null, look.replaces(), look.withdrawn(), look.clockOffsetMs());
    }
}
