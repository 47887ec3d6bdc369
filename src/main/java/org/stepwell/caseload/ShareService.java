package org.stepwell.caseload;

import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.problem.Refused;
import org.stepwell.pacing.PacingService;
import org.stepwell.pacing.UnitInHand;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Children are shared with an adult by those who see their class whole: what, why, until when. */
@Service
@Transactional
public class ShareService {
    /** Longest time for which a child is shared at once, days. */
    public static final int LONGEST = 366;
    private static final int WEEKS_WITHOUT_HOLIDAYS = 12;
    private static final int HOLIDAYS_FROM = 5;

    private final CaseloadStore store;
    private final RosterService roster;
    private final PacingService pacing;
    private final Access access;
    private final CurrentAdult current;
    private final Clock clock;

    ShareService(CaseloadStore store, RosterService roster, PacingService pacing, Access access, CurrentAdult current,
            Clock clock) {
        this.store = store;
        this.roster = roster;
        this.pacing = pacing;
        this.access = access;
        this.current = current;
        this.clock = clock;
    }

    /**
     * What is shared of a class today.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public List<Sharing> sharings(UUID classId) {
        access.requireClass(classId);
        return store.sharings(roster.children(classId).stream().map(ChildRow::childId).toList(), current.today());
    }

    /**
     * Adults of the school with whom children of a class can be shared, by name.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public List<Map.Entry<UUID, String>> others(UUID classId) {
        access.requireClass(classId);
        return store.others(current.get().schoolId(), classId, current.today());
    }

    /**
     * The last day offered: the day before the next holidays of a week or more where the calendar names some, else twelve
     * weeks from now.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public LocalDate offered(UUID classId) {
        access.requireClass(classId);
        LocalDate today = current.today();
        return pacing.unit(classId).map(UnitInHand::calendar).stream().map(SchoolCalendar::breaks)
                .flatMap(Collection::stream).filter(b -> b.from().isAfter(today.plusWeeks(1))
                        && schoolDays(b) >= HOLIDAYS_FROM).map(b -> b.from().minusDays(1)).min(LocalDate::compareTo)
                .orElse(today.plusWeeks(WEEKS_WITHOUT_HOLIDAYS));
    }

    private static long schoolDays(SchoolCalendar.Break holidays) {
        return holidays.from().datesUntil(holidays.to().plusDays(1)).filter(day ->
                day.getDayOfWeek() != DayOfWeek.SATURDAY && day.getDayOfWeek() != DayOfWeek.SUNDAY).count();
    }

    /**
     * Shares children from today on. What was shared of them with that adult before is ended, so that one says what holds.
     *
     * @param children of the class, at least one
     * @param plan plans and sessions too
     * @param notes notes home too
     * @param reason why, 1 to 500 letters
     * @param until last day, today or later, at most {@value #LONGEST} days on
     * @throws Refused when something of it cannot be taken
     * @throws NotVisible when the class may not be seen whole, or a child is not in it
     */
    public void share(UUID classId, Set<UUID> children, UUID adultId, boolean plan, boolean notes, String reason,
            LocalDate until) {
        access.requireClass(classId);
        LocalDate today = current.today();
        if (children.isEmpty()) {
            throw new Refused("share.nobody");
        }
        if (reason.isBlank() || reason.strip().length() > 500) {
            throw new Refused("share.reason");
        }
        if (until.isBefore(today) || ChronoUnit.DAYS.between(today, until) > LONGEST) {
            throw new Refused("share.until", today, today.plusDays(LONGEST));
        }
        if (store.others(current.get().schoolId(), classId, today).stream().noneMatch(o -> o.getKey().equals(adultId))) {
            throw new Refused("share.adult");
        }
        List<UUID> inClass = roster.children(classId).stream().map(ChildRow::childId).toList();
        if (!inClass.containsAll(children)) {
            throw new NotVisible();
        }
        SignedIn adult = current.get();
        store.with(adultId, children, today).forEach(before -> store.end(before.grantId(), clock.instant()));
        children.stream().sorted().forEach(child -> store.share(adult.districtId(), child,
                new CaseloadStore.Terms(adultId, plan, notes, reason.strip(), today, until), adult.adultId()));
    }

    /**
     * Ends a sharing at once; the next request of that adult finds nothing any more. One that is over already, or is not of
     * a child in the class, is left as it is.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public void end(UUID classId, UUID grantId) {
        sharings(classId).stream().filter(s -> s.grantId().equals(grantId))
                .forEach(sharing -> store.end(sharing.grantId(), clock.instant()));
    }

    /**
     * Hands everything of a class that is shared with one adult over to another: same children, parts, reasons, last days.
     *
     * @throws Refused when nothing is shared with the one, or the other sees the class already
     * @throws NotVisible when the class may not be seen whole
     */
    public void handOver(UUID classId, UUID fromAdult, UUID toAdult) {
        List<Sharing> theirs = sharings(classId).stream().filter(s -> s.adultId().equals(fromAdult)).toList();
        if (theirs.isEmpty() || fromAdult.equals(toAdult)) {
            throw new Refused("share.hand-over");
        }
        for (Sharing sharing : theirs) {
            share(classId, Set.of(sharing.childId()), toAdult, sharing.plan(), sharing.notes(), sharing.reason(),
                    sharing.until());
            store.end(sharing.grantId(), clock.instant());
        }
    }
}
