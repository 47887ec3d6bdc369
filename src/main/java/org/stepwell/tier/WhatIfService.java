package org.stepwell.tier;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.tier.WhatIf;
import org.stepwell.core.tier.WhatIf.Decided;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Other rules over a class's own history. Reads only: nothing is stored, and nobody is told. */
@Service
@Transactional(readOnly = true)
public class WhatIfService {
    private static final int WEEK = 7;

    private final TierStore store;
    private final RosterService roster;
    private final ProgressionService progressions;
    private final PacingService pacing;
    private final ObservationService observations;
    private final CurrentAdult current;
    private final Parameters parameters = Parameters.shipped();

    WhatIfService(TierStore store, RosterService roster, ProgressionService progressions, PacingService pacing,
            ObservationService observations, CurrentAdult current) {
        this.store = store;
        this.roster = roster;
        this.progressions = progressions;
        this.pacing = pacing;
        this.observations = observations;
        this.current = current;
    }

    /**
     * What was found.
     *
     * @param tried the rules that were tried, followed from the start of the unit
     * @param usual the rules in use, followed in the same way
     * @param names of the children this adult may see, by school key; the lines hold no other
     * @param days of the reviews, the last of them today
     */
    public record Found(WhatIf tried, WhatIf usual, Map<String, String> names, SortedSet<LocalDate> days) {}

    /**
     * Tries rules on the unit in hand.
     *
     * @param weekly review every seventh day of the unit, back from today; else on the days on which anything was decided.
     *     Where nothing was decided yet, weekly all the same
     * @return empty when the class has no unit yet
     */
    public Optional<Found> tried(UUID classId, RuleFile rules, boolean weekly) {
        List<ChildRow> children = roster.children(classId);
        return pacing.unit(classId).map(unit -> {
            Progression progression = progressions.ofClass(classId);
            Map<String, String> names = new HashMap<>();
            Map<String, LocalDate> joined = new HashMap<>();
            for (ChildRow child : children) {
                names.put(child.schoolKey(), child.label());
                if (child.startsOn().isAfter(unit.startsOn())) {
                    joined.put(child.schoolKey(), child.startsOn());
                }
            }
            List<Look> looks = observations.ofClass(classId).stream()
                    .filter(look -> names.containsKey(look.child())).toList();
            List<Decided> decided = decided(unit, children);
            SortedSet<LocalDate> days = days(unit, decided, weekly);
            ClassSetting setting = new ClassSetting(progression, unit.pacing(), unit.calendar());
            return new Found(WhatIf.tried(setting, looks, decided, days, joined, rules, parameters),
                    WhatIf.tried(setting, looks, decided, days, joined, RuleFile.shipped(RuleFile.DEFAULT),
                            parameters), names, days);
        });
    }

    private List<Decided> decided(UnitInHand unit, List<ChildRow> children) {
        Map<UUID, List<DecisionLine>> lines = store.decisions(unit.unitId(),
                children.stream().map(ChildRow::childId).toList());
        List<Decided> decided = new ArrayList<>();
        for (ChildRow child : children) {
            lines.getOrDefault(child.childId(), List.of()).forEach(line ->
                    decided.add(new Decided(line.asOf(), child.schoolKey(), line.to())));
        }
        return decided;
    }

    private SortedSet<LocalDate> days(UnitInHand unit, List<Decided> decided, boolean weekly) {
        LocalDate today = current.today();
        SortedSet<LocalDate> days = new TreeSet<>();
        if (weekly || decided.isEmpty()) {
            for (LocalDate day = today; !day.isBefore(unit.startsOn()); day = day.minusDays(WEEK)) {
                days.add(day);
            }
        } else {
            days.addAll(WhatIf.daysOf(decided));
        }
        days.add(today);
        return days;
    }
}
