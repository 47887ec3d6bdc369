package org.stepwell.grouping;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.grouping.GroupChild;
import org.stepwell.core.grouping.Wish;
import org.stepwell.core.progression.Progression;
import org.stepwell.grouping.GroupingStore.WishRow;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Kind;
import org.stepwell.grouping.Seating.Place;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.TierService;

/** Groups of a class: what they are made from, what is asked of them, and what was saved. */
@Service
@Transactional
public class GroupingService {
    private static final int GROUPINGS_LOOKED_BACK = 30;
    private static final int MOST_HISTORY = 40;

    private final GroupingStore store;
    private final RosterService roster;
    private final TierService tiers;
    private final Access access;
    private final CurrentAdult current;

    GroupingService(GroupingStore store, RosterService roster, TierService tiers, Access access,
            CurrentAdult current) {
        this.store = store;
        this.roster = roster;
        this.tiers = tiers;
        this.access = access;
        this.current = current;
    }

    /**
     * What groups of a class are made from today.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public GroupsPicture picture(UUID classId) {
        access.requireClass(classId);
        ClassPicture picture = tiers.picture(classId);
        List<Seating> before = store.before(classId, picture.day(), GROUPINGS_LOOKED_BACK);
        boolean unit = !picture.unitTitle().isEmpty();
        List<GroupChild> children = new ArrayList<>();
        SortedMap<String, LocalDate> since = new TreeMap<>();
        for (ClassPicture.OneChild one : picture.children()) {
            String id = one.row().schoolKey();
            Company company = Company.of(id, before);
            String focus = picture.focus(one).map(Progression.Skill::code).orElse(null);
            children.add(new GroupChild(id, unit ? one.state().tier() : null, focus, step(one, focus),
                    company.lastGroup(), company.stays()));
            if (company.since() != null) {
                since.put(id, company.since());
            }
        }
        List<ChildRow> rows = picture.children().stream().map(ClassPicture.OneChild::row).toList();
        return new GroupsPicture(picture.day(), rows, children, since, wishes(classId, rows),
                seating(classId, picture.day()), picture.progression(), unit);
    }

    /** The mean step on a skill, to one decimal. */
    private static @Nullable Double step(ClassPicture.OneChild one, @Nullable String focus) {
        SkillEstimate estimate = focus == null ? null : one.picture().skills().get(focus);
        if (estimate == null || !estimate.seen()) {
            return null;
        }
        double mean = 0;
        for (int step = 1; step <= 5; step++) {
            mean += step * estimate.chances().get(step - 1);
        }
        return StrictMath.clamp(StrictMath.rint(mean * 10) / 10, 1, GroupChild.HIGHEST);
    }

    private List<Wish> wishes(UUID classId, List<ChildRow> rows) {
        Map<UUID, String> keys = new HashMap<>();
        rows.forEach(row -> keys.put(row.childId(), row.schoolKey()));
        List<Wish> wishes = new ArrayList<>();
        for (WishRow row : store.wishes(classId)) {
            String one = keys.get(row.child());
            String other = row.other() == null ? one : keys.get(row.other());
            if (one != null && other != null) {
                wishes.add(switch (row.kind()) {
                    case "apart" -> new Wish.Apart(one, other);
                    case "together" -> new Wish.Together(one, other);
                    case "away" -> new Wish.AwayAt(one, row.rotation() == null ? 0 : row.rotation());
                    default -> new Wish.WithSecondAdult(one);
                });
            }
        }
        return wishes;
    }

    /**
     * Writes a wish down, or takes it back. The reason of a wish is not asked for.
     *
     * @throws IllegalArgumentException for a place, which is pinned on the groups themselves
     * @throws NotVisible when the class or a child may not be seen
     */
    public void wish(UUID classId, Wish wish, boolean holds) {
        access.requireClass(classId);
        SignedIn adult = current.get();
        List<UUID> ids = wish.children().stream().map(key -> roster.byKey(key).filter(c -> c.classId().equals(classId))
                .orElseThrow(NotVisible::new).childId()).toList();
        boolean turned = ids.size() == 2 && ids.get(0).compareTo(ids.get(1)) > 0;
        UUID first = turned ? ids.get(1) : ids.get(0);
        UUID second = turned ? ids.get(0) : ids.getLast();
        store.wish(adult.districtId(), classId, switch (wish) {
            case Wish.Apart w -> new WishRow("apart", first, second, null);
            case Wish.Together w -> new WishRow("together", first, second, null);
            case Wish.AwayAt w -> new WishRow("away", first, null, w.rotation());
            case Wish.WithSecondAdult w -> new WishRow("second_adult", first, null, null);
            case Wish.InGroup w -> throw new IllegalArgumentException("a place is pinned, not wished for");
        }, holds, adult.adultId());
    }

    /**
     * Saves groups from a day on, or for one day. Nothing saved before is changed.
     *
     * @param groups one for each number from 1 on
     * @param places group, pin and reason by the school's own id
     * @throws IllegalArgumentException when a child is missing, sits in a group that there is not, or the day is past
     * @throws NotVisible when the class may not be decided for by this adult
     */
    public void save(UUID classId, LocalDate on, Kind kind, List<Group> groups, Map<String, Place> places) {
        access.requireClass(classId);
        if (on.isBefore(current.today())) {
            throw new IllegalArgumentException("groups for a day that is past: " + on);
        }
        SignedIn adult = current.get();
        List<ChildRow> rows = roster.children(classId);
        for (ChildRow row : rows) {
            Place place = places.get(row.schoolKey());
            if (place == null || place.group() < 1 || place.group() > groups.size()) {
                throw new IllegalArgumentException("every child of the class needs a place in one of the groups");
            }
        }
        UUID seating = store.save(adult.districtId(), classId, on, kind, groups, adult.adultId());
        rows.forEach(row -> store.place(adult.districtId(), seating, row.childId(), places.get(row.schoolKey())));
    }

    /** Groups that hold on a day, with the children this adult may see; those for that day alone come first. */
    public Optional<Seating> seating(UUID classId, LocalDate day) {
        List<String> visible = roster.children(classId).stream().map(ChildRow::schoolKey).toList();
        if (visible.isEmpty()) {
            return Optional.empty();
        }
        return store.on(classId, day).stream().findFirst().map(whole -> seen(whole, visible));
    }

    private static Seating seen(Seating whole, List<String> visible) {
        SortedMap<String, Place> places = new TreeMap<>(whole.places());
        places.keySet().retainAll(visible);
        return new Seating(whole.seatingId(), whole.forOn(), whole.kind(), whole.groups(), places, whole.savedBy(),
                whole.savedAt());
    }

    /**
     * Saved groups of a class by their ids; those of another class are left out.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public Map<UUID, Seating> saved(UUID classId, Collection<UUID> seatings) {
        access.requireClass(classId);
        return store.of(classId, seatings).stream().collect(Collectors.toMap(Seating::seatingId, s -> s));
    }

    /**
     * What was saved for a class, newest first.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public List<Seating> history(UUID classId) {
        access.requireClass(classId);
        return store.history(classId, MOST_HISTORY);
    }
}
