package org.stepwell.check;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.check.CheckResults.CarryOver;
import org.stepwell.check.CheckResults.Frequent;
import org.stepwell.check.CheckResults.OneChild;
import org.stepwell.check.CheckResults.Why;
import org.stepwell.core.check.AgainstTable;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.ItemReport;
import org.stepwell.core.check.Mark;
import org.stepwell.core.check.SkillResult;
import org.stepwell.core.evidence.CountedLook;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.observation.ObservationService;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;

/** Reads a check: what each child has, which item to look at, what to carry over. Nothing of it is stored. */
@Service
@Transactional(readOnly = true)
public class CheckReport {
    private final CheckService checks;
    private final CheckStore store;
    private final ObservationService observations;
    private final ProgressionService progressions;
    private final CurrentAdult current;

    CheckReport(CheckService checks, CheckStore store, ObservationService observations,
            ProgressionService progressions, CurrentAdult current) {
        this.checks = checks;
        this.store = store;
        this.observations = observations;
        this.progressions = progressions;
        this.current = current;
    }

    /** What a check tells. */
    public CheckResults results(UUID checkId) {
        CheckSheet sheet = checks.sheet(checkId);
        UUID classId = checks.classOf(checkId);
        EffectiveLooks looks = EffectiveLooks.of(observations.ofClass(classId), progressions.ofClass(classId),
                current.today());
        LocalDate from = store.unit(classId).filter(u -> u.unitId().equals(sheet.line().unitId()))
                .map(CheckStore.Unit::startsOn).orElse(sheet.line().heldOn().minusWeeks(6));
        List<OneChild> children = new ArrayList<>();
        for (ChildRow child : sheet.sat()) {
            List<CheckItem> items = sheet.itemsFor(child.childId());
            Map<String, Mark> marks = sheet.marks(child.childId(), 1);
            List<SkillResult> skills = SkillResult.of(items, marks);
            List<AgainstTable> apart = new ArrayList<>();
            for (SkillResult skill : skills) {
                List<CountedLook> own = looks.of(child.schoolKey(), skill.skill()).stream()
                        .filter(l -> !l.day().isBefore(from)).toList();
                AgainstTable.of(skill.skill(), items, marks, own).ifPresent(apart::add);
            }
            double total = 0;
            int reached = 0;
            for (CheckItem item : items) {
                double value = marks.getOrDefault(item.code(), Mark.CLEARED).value();
                total += Double.isNaN(value) ? 0 : value;
                reached += Double.isNaN(value) ? 0 : 1;
            }
            children.add(new OneChild(child, total, reached, skills, apart));
        }
        return new CheckResults(sheet, ItemReport.of(sheet.responses()), children, errors(sheet),
                carryOver(sheet, children));
    }

    /** The carry-over of the newest check of the class that counts; empty when none does. */
    public Optional<CheckResults> newestCounted(UUID classId) {
        return checks.checks(classId).stream().filter(line -> line.counted() && line.retakeOf() == null).findFirst()
                .map(line -> results(line.checkId()));
    }

    private static Map<String, Frequent> errors(CheckSheet sheet) {
        Map<String, Map<String, Integer>> counts = new TreeMap<>();
        sheet.cells().stream().filter(c -> c.entry() == 1 && c.error() != null)
                .forEach(c -> counts.computeIfAbsent(c.item(), i -> new TreeMap<>())
                        .merge(Objects.requireNonNull(c.error()), 1, Integer::sum));
        Map<String, Frequent> frequent = new LinkedHashMap<>();
        counts.forEach((item, own) -> own.entrySet().stream().max(Map.Entry.<String, Integer>comparingByValue()
                .thenComparing(Map.Entry.<String, Integer>comparingByKey(Comparator.reverseOrder())))
                .filter(e -> e.getValue() >= 2)
                .ifPresent(e -> frequent.put(item, new Frequent(e.getKey(), e.getValue()))));
        return frequent;
    }

    private static List<CarryOver> carryOver(CheckSheet sheet, List<OneChild> children) {
        List<CarryOver> list = new ArrayList<>();
        LinkedHashSet<String> all = new LinkedHashSet<>();
        sheet.items().forEach(item -> all.add(item.skill()));
        for (ChildRow child : sheet.children()) {
            Optional<OneChild> sat = children.stream().filter(c -> c.child().equals(child)).findFirst();
            if (sat.isEmpty()) {
                if (!sheet.itemsFor(child.childId()).isEmpty()) {
                    all.forEach(skill -> list.add(new CarryOver(child, skill, Why.ABSENT)));
                }
                continue;
            }
            for (SkillResult skill : sat.get().skills()) {
                boolean apart = sat.get().apart().stream().anyMatch(a -> a.skill().equals(skill.skill()));
                if (apart) {
                    list.add(new CarryOver(child, skill.skill(), Why.APART));
                } else if (skill.says() == SkillResult.Says.AGAIN) {
                    list.add(new CarryOver(child, skill.skill(), Why.MISSED));
                } else if (skill.says() == SkillResult.Says.PARTLY) {
                    list.add(new CarryOver(child, skill.skill(), Why.PARTLY));
                } else if (skill.says() == SkillResult.Says.TOO_FEW && skill.reached() < skill.items()) {
                    list.add(new CarryOver(child, skill.skill(), Why.TOO_FEW));
                }
            }
        }
        return list;
    }
}
