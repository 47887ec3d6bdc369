package org.stepwell.check;

import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.Mark;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.Tags;
import org.stepwell.observation.ObservationService;
import org.stepwell.observation.ObservationService.Outcome;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.roster.ChildRow;

/**
 * Keeps the looks of a check equal to its marks. Right is a look at the step an item tests, wrong one at the step
 * below; below step 1 it is step 1 with {@code not_yet}. A half and an item not reached say nothing. When a mark, a day
 * or the blueprint changes, a new look stands in for the old one or takes it back.
 */
@Component
class CheckEvidence {
    /** School begins; only the day matters to what the looks say. */
    private static final LocalTime MORNING = LocalTime.of(9, 0);

    private final CheckStore store;
    private final ObservationService observations;
    private final CurrentAdult current;

    CheckEvidence(CheckStore store, ObservationService observations, CurrentAdult current) {
        this.store = store;
        this.observations = observations;
        this.current = current;
    }

    /** Brings the looks of one child in line with the sheet; the check must be held by this transaction. */
    void follow(CheckSheet sheet, ChildRow child) {
        UUID checkId = sheet.line().checkId();
        Map<String, CheckStore.Spoken> spoken = store.spoken(checkId, child.childId());
        Map<String, Mark> marks = sheet.marks(child.childId(), 1);
        for (CheckItem item : sheet.items()) {
            Mark mark = marks.getOrDefault(item.code(), Mark.CLEARED);
            Look wanted = mark == Mark.RIGHT || mark == Mark.WRONG
                    ? look(sheet, child, item, mark == Mark.RIGHT, spoken.get(item.code())) : null;
            bring(sheet, child, item.code(), wanted, spoken.remove(item.code()));
        }
        spoken.forEach((code, old) -> bring(sheet, child, code, null, old));
    }

    private void bring(CheckSheet sheet, ChildRow child, String code, @Nullable Look wanted,
            CheckStore.@Nullable Spoken old) {
        String says = wanted == null ? "" : wanted.day() + " " + wanted.skill() + " " + wanted.step() + " "
                + String.join(" ", wanted.tags());
        if (says.equals(old == null ? "" : old.says())) {
            return;
        }
        Look written = wanted != null ? wanted : takingBack(sheet, child, code, java.util.Objects.requireNonNull(old));
        observations.record(List.of(written), true).stream().filter(t -> t.outcome() == Outcome.REFUSED).findAny()
                .ifPresent(t -> {
                    throw new IllegalStateException(String.valueOf(t.reason()));
                });
        store.addSpoken(current.get().districtId(), sheet.line().checkId(), child.childId(), code,
                new CheckStore.Spoken(old == null ? 1 : old.number() + 1, written.id(), says));
    }

    private Look look(CheckSheet sheet, ChildRow child, CheckItem item, boolean right,
            CheckStore.@Nullable Spoken old) {
        Set<String> tags = new TreeSet<>();
        if (!right && item.step() == 1) {
            tags.add(Tags.NOT_YET);
        }
        sheet.cells().stream().filter(c -> c.childId().equals(child.childId()) && c.item().equals(item.code())
                && c.entry() == 1 && c.error() != null).forEach(c -> tags.add(c.error()));
        return new Look(UUID.randomUUID(), at(sheet, child, old), child.schoolKey(), item.skill(),
                item.question().isBlank() ? item.code() : shortened(item.question()),
                EffectiveLooks.stepOfItem(item.step(), right), Help.NONE, Kind.UNIT_CHECK, "", tags,
                null, old == null ? null : old.lookId(), false, null);
    }

    private Look takingBack(CheckSheet sheet, ChildRow child, String code, CheckStore.Spoken old) {
        return new Look(UUID.randomUUID(), at(sheet, child, old), child.schoolKey(), null, code, null, Help.NONE,
                Kind.UNIT_CHECK, "", Set.of(), null, old.lookId(), true, null);
    }

    private OffsetDateTime at(CheckSheet sheet, ChildRow child, CheckStore.@Nullable Spoken old) {
        CheckSitting sitting = sheet.sitting(child.childId());
        return (sitting.satOn() == null ? sheet.line().heldOn() : sitting.satOn()).atTime(MORNING)
                .plusSeconds(old == null ? 0 : old.number()).atZone(current.get().zone()).toOffsetDateTime();
    }

    private static String shortened(String question) {
        return question.length() <= 100 ? question : question.substring(0, 99) + "…";
    }
}
