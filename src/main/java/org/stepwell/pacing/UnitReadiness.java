package org.stepwell.pacing;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.check.Coverage;
import org.stepwell.core.check.LookAgain;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Parameters;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ClassSetting;
import org.stepwell.core.tier.Reviewer;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.privacy.Access;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Who was seen on what the unit builds on, and how often everybody was looked at. */
@Service
@Transactional(readOnly = true)
public class UnitReadiness {
    private final PacingService pacing;
    private final ObservationService observations;
    private final ProgressionService progressions;
    private final RosterService roster;
    private final Access access;
    private final CurrentAdult current;

    UnitReadiness(PacingService pacing, ObservationService observations, ProgressionService progressions,
            RosterService roster, Access access, CurrentAdult current) {
        this.pacing = pacing;
        this.observations = observations;
        this.progressions = progressions;
        this.roster = roster;
        this.access = access;
        this.current = current;
    }

    /** Prerequisites of the unit in hand by child; empty without a unit or where it builds on nothing. */
    public Map<ChildRow, List<LookAgain>> prerequisites(UUID classId) {
        access.requireClass(classId);
        Map<ChildRow, List<LookAgain>> all = new LinkedHashMap<>();
        pacing.unit(classId).ifPresent(unit -> {
            Progression progression = progressions.ofClass(classId);
            Map<String, Integer> expected = new TreeMap<>();
            Set<String> own = new LinkedHashSet<>();
            for (PacingRow row : unit.pacing().rows()) {
                boolean before = unit.pacing().taughtFrom(row.skill(), unit.calendar())
                        .filter(t -> t.isBefore(unit.startsOn())).isPresent();
                if (row.expectedStep() != null && !before) {
                    expected.merge(row.skill(), row.expectedStep(), Math::max);
                    own.add(row.skill());
                }
            }
            Map<String, Integer> needs = LookAgain.needs(progression, expected);
            List<Look> looks = observations.ofClass(classId);
            Reviewer reviewer = new Reviewer(new ClassSetting(progression, unit.pacing(), unit.calendar()), looks,
                    RuleFile.shipped(RuleFile.DEFAULT), Parameters.shipped());
            for (ChildRow child : roster.children(classId)) {
                List<LookAgain> needed = LookAgain.of(reviewer.picture(child.schoolKey(), current.today()), needs, own);
                if (!needed.isEmpty()) {
                    all.put(child, needed);
                }
            }
        });
        return all;
    }

    /**
     * How often each child was looked at, by name.
     *
     * @param from first day
     * @param to last day
     */
    public Map<ChildRow, Coverage> coverage(UUID classId, LocalDate from, LocalDate to) {
        EffectiveLooks looks = EffectiveLooks.of(observations.ofClass(classId), progressions.ofClass(classId),
                current.today());
        Map<ChildRow, Coverage> all = new LinkedHashMap<>();
        roster.children(classId).forEach(child -> all.put(child,
                Coverage.of(child.schoolKey(), looks.of(child.schoolKey()), from, to)));
        return all;
    }
}
