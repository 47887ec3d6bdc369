package org.stepwell.table;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Skill;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.PacingService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/**
 * The first weeks of a class: three minutes with one child at a time, four tasks, before any unit is in hand. Only
 * looks since the child came into this class count as met; how older ones went stays closed.
 */
@Component
class ShortStarts {
    private static final int TASKS = 4;

    private final PacingService pacing;
    private final RosterService roster;
    private final ObservationService observations;

    ShortStarts(PacingService pacing, RosterService roster, ObservationService observations) {
        this.pacing = pacing;
        this.roster = roster;
        this.observations = observations;
    }

    /** The skills to try, in order, and who has tried each of them; no skills once a unit is in hand. */
    Map<String, List<String>> of(UUID classId, Progression progression) {
        if (pacing.unit(classId).isPresent()) {
            return Map.of("skills", List.of(), "met", List.of());
        }
        List<String> skills = progression.first(TASKS).stream().map(Skill::code).toList();
        List<Look> looks = observations.ofClass(classId);
        return Map.of("skills", skills, "met", roster.children(classId).stream()
                .filter(child -> seen(child, looks).containsAll(skills)).map(ChildRow::schoolKey).toList());
    }

    private static Set<String> seen(ChildRow child, List<Look> looks) {
        LocalDate since = child.startsOn();
        return looks.stream().filter(look -> look.child().equals(child.schoolKey()) && look.skill() != null
                && look.step() != null && !look.day().isBefore(since)).map(Look::skill).collect(Collectors.toSet());
    }
}
