package org.stepwell.pacing;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.pacing.Pacing;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.pacing.SchoolCalendar.Break;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;

/** The unit in hand, its pacing and the school's calendar. */
@Service
@Transactional
public class PacingService {
    private final PacingStore store;
    private final Access access;
    private final CurrentAdult current;

    PacingService(PacingStore store, Access access, CurrentAdult current) {
        this.store = store;
        this.access = access;
        this.current = current;
    }

    /** The unit of the class that started last; empty when it has none yet or the adult has no part in the class. */
    public Optional<UnitInHand> unit(UUID classId) {
        if (!access.hasPart(classId)) {
            return Optional.empty();
        }
        return store.unit(classId).map(unit -> new UnitInHand(unit.unitId(), unit.title(), unit.startsOn(),
                new Pacing(store.pacing(unit.unitId())), new SchoolCalendar(store.breaks(classId))));
    }

    /** Starts a unit on a progression. */
    public UUID startUnit(UUID classId, String progression, String title, LocalDate from) {
        access.requireClass(classId);
        return store.addUnit(current.get().districtId(), classId, progression, title, from);
    }

    /**
     * Takes a pacing file for the unit in hand; it stands in for the one before.
     *
     * @throws NotVisible when the adult does not see the class whole or its unit in hand is another
     */
    public void importPacing(UUID classId, UUID unitId, List<PacingRow> rows) {
        access.requireClass(classId);
        if (store.unit(classId).filter(unit -> unit.unitId().equals(unitId)).isEmpty()) {
            throw new NotVisible();
        }
        store.addPacing(current.get().districtId(), unitId, rows);
    }

    /** Takes a calendar file for the class; it stands in for the one before. */
    public void importCalendar(UUID classId, List<Break> rows) {
        access.requireClass(classId);
        store.addBreaks(current.get().districtId(), classId, rows);
    }
}
