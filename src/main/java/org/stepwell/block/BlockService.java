package org.stepwell.block;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.LostTime;
import org.stepwell.core.rotation.MinutesLedger;
import org.stepwell.core.rotation.Rotations;
import org.stepwell.core.rotation.Stop;
import org.stepwell.core.rotation.TeacherOrder;
import org.stepwell.grouping.GroupingService;
import org.stepwell.grouping.Seating;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** The block of a class: how it is set up, who is where today, and the minutes at the teacher table. */
@Service
@Transactional
public class BlockService {
    /** Days that the minutes are summed over, today included. */
    public static final int LEDGER_DAYS = 28;

    private final BlockStore store;
    private final GroupingService groupings;
    private final RosterService roster;
    private final Access access;
    private final CurrentAdult current;

    BlockService(BlockStore store, GroupingService groupings, RosterService roster, Access access,
            CurrentAdult current) {
        this.store = store;
        this.groupings = groupings;
        this.roster = roster;
        this.access = access;
        this.current = current;
    }

    /**
     * The block as it stands today.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public BlockPicture picture(UUID classId) {
        access.requireClass(classId);
        LocalDate day = current.today();
        List<ChildRow> children = roster.children(classId);
        List<BlockDay> versions = store.days(classId, day.minusDays(LEDGER_DAYS - 1L));
        Map<LocalDate, Set<String>> away = store.absent(classId, day.minusDays(LEDGER_DAYS - 1L));
        Map<UUID, Seating> saved = groupings.saved(classId, versions.stream().map(BlockDay::seatingId).distinct().toList());
        List<MinutesLedger.Day> days = TeacherMinutes.days(versions, saved, away);
        SortedMap<String, MinutesLedger.Line> ledger = MinutesLedger.of(days);
        DayVersions today = DayVersions.of(versions.stream().filter(d -> d.day().equals(day)).toList());
        BlockDay running = today.running();
        BlockPattern pattern = (running == null ? store.setup(classId) : store.setupOf(classId, day))
                .map(BlockStore.Setup::pattern).orElse(null);
        Seating groups = running == null ? groupings.seating(classId, day).orElse(null)
                : saved.get(running.seatingId());
        List<TeacherOrder.Place> order = pattern == null || groups == null ? List.of()
                : TeacherMinutes.order(pattern, groups, days, day, store.count(classId, day));
        DayPlan plan = running != null ? running.plan() : proposed(classId, pattern, order, day);
        return new BlockPicture(day, current.now(), current.get().zone(), children, pattern, groups, order, running, plan, today.stops(), ledger,
                away.getOrDefault(day, Set.of()), running != null || groups == null ? List.of()
                        : Joining.of(groups, away.getOrDefault(day, Set.of()), groupings.picture(classId).wishes()));
    }

    /**
     * Lets a group of which too few are there sit with another today. From tomorrow on the groups are as before.
     *
     * @throws Refused when the block has begun, or the two may not sit together
     * @throws NotVisible when the class may not be seen whole
     */
    public void join(UUID classId, int group, int with) {
        BlockPicture picture = picture(classId);
        if (picture.running() != null) {
            throw new Refused("block.begun");
        }
        Seating groups = picture.groups();
        if (groups == null || picture.few().stream().noneMatch(f -> f.group() == group && f.with().contains(with))) {
            throw new Refused("block.join");
        }
        groupings.save(classId, picture.day(), Seating.Kind.DAY, groups.groups(), Joining.places(groups, group, with));
    }

    private @Nullable DayPlan proposed(UUID classId, @Nullable BlockPattern pattern, List<TeacherOrder.Place> order,
            LocalDate day) {
        if (pattern == null || order.isEmpty() || pattern.rotationsOn(day.getDayOfWeek()) == 0
                || order.size() > pattern.stations().size()) {
            return null;
        }
        return Rotations.plan(pattern, pattern.rotationsOn(day.getDayOfWeek()),
                order.stream().map(TeacherOrder.Place::group).toList(), store.count(classId, day), pattern.starts());
    }

    /**
     * Saves how the block runs, from now on. A block that runs today goes on as it began.
     *
     * @throws NotVisible when the class may not be seen whole
     */
    public void setUp(UUID classId, BlockPattern pattern) {
        access.requireClass(classId);
        SignedIn adult = current.get();
        store.save(adult.districtId(), classId, pattern, adult.adultId());
    }

    /**
     * Begins today's block with the groups and the order as they stand.
     *
     * @param at when the first rotation begins, school time
     * @param rotations how many today
     * @throws Refused when it was begun already, or there is no set-up, no groups, or fewer stations than groups
     * @throws NotVisible when the class may not be seen whole
     */
    public void start(UUID classId, LocalTime at, int rotations) {
        BlockPicture picture = picture(classId);
        if (picture.running() != null) {
            throw new Refused("block.begun");
        }
        BlockPattern pattern = picture.pattern();
        Seating groups = picture.groups();
        if (pattern == null || groups == null) {
            throw new Refused(pattern == null ? "block.setup" : "block.groups");
        }
        if (rotations < 1 || rotations > BlockPattern.MOST_ROTATIONS) {
            throw new Refused("block.rotations", BlockPattern.MOST_ROTATIONS, rotations);
        }
        DayPlan plan = Rotations.plan(pattern, rotations, picture.order().stream().map(TeacherOrder.Place::group)
                .toList(), store.count(classId, picture.day()), at.truncatedTo(ChronoUnit.MINUTES));
        add(classId, new BlockDay(picture.day(), 1, groups.seatingId(), plan, null, null, null));
    }

    /**
     * What the day would be after a loss, by what is done about it; a way that is not open is left out.
     *
     * @param from when the loss begins, school time; while the clock stands still already, it adds to that
     * @param lost minutes
     * @throws Refused when no way is open, saying why
     * @throws NotVisible when the class may not be seen whole
     */
    public Map<LostTime, DayPlan> ways(UUID classId, LocalTime from, int lost) {
        BlockPicture picture = picture(classId);
        Map<LostTime, DayPlan> ways = new LinkedHashMap<>();
        Refused why = new Refused("block.over");
        for (LostTime way : LostTime.values()) {
            try {
                ways.put(way, after(picture, way, plan(picture), stop(picture, from, lost)));
            } catch (Refused closed) {
                why = closed; // The others may be open.
            }
        }
        if (ways.isEmpty()) {
            throw why;
        }
        return ways;
    }

    /**
     * Goes on after a loss.
     *
     * @param version the day's version that the adult saw
     * @throws Refused when the block does not run, nothing is left to move, or somebody changed the day meanwhile
     * @throws NotVisible when the class may not be seen whole
     */
    public void lose(UUID classId, int version, LostTime way, LocalTime from, int lost) {
        BlockPicture picture = picture(classId);
        if (picture.running() == null || picture.running().version() != version) {
            throw new Refused("block.meanwhile");
        }
        Stop stop = stop(picture, from, lost);
        add(classId, new BlockDay(picture.day(), version + 1, picture.running().seatingId(),
                after(picture, way, picture.running().plan(), stop), way, stop, null));
    }

    /**
     * Goes on now, since a loss ended earlier than was said: what was done about it holds for the minutes it took.
     *
     * @param version the day's version that the adult saw
     * @throws Refused when the clock does not stand still, or somebody changed the day meanwhile
     * @throws NotVisible when the class may not be seen whole
     */
    public void goOn(UUID classId, int version) {
        BlockPicture picture = picture(classId);
        if (picture.running() == null || picture.running().version() != version) {
            throw new Refused("block.meanwhile");
        }
        DayVersions.Early early = DayVersions.of(store.days(classId, picture.day())).cutAt(picture.now());
        add(classId, new BlockDay(picture.day(), version + 1, picture.running().seatingId(),
                after(picture, early.way(), early.plan(), early.stop()), early.way(), early.stop(), early.version()));
    }

    private static Stop stop(BlockPicture picture, LocalTime from, int lost) {
        return new Stop(Stop.next(picture.stops(), from.truncatedTo(ChronoUnit.MINUTES)), lost);
    }

    private static DayPlan plan(BlockPicture picture) {
        if (picture.running() == null) {
            throw new Refused("block.meanwhile");
        }
        return picture.running().plan();
    }

    private static DayPlan after(BlockPicture picture, LostTime way, DayPlan plan, Stop stop) {
        if (picture.pattern() == null) {
            throw new Refused("block.meanwhile");
        }
        return way.after(plan, picture.pattern().change(), stop.from(), stop.minutes(), TeacherMinutes.owed(picture));
    }

    private void add(UUID classId, BlockDay day) {
        SignedIn adult = current.get();
        UUID setup = (day.version() == 1 ? store.setup(classId) : store.setupOf(classId, day.day())).orElseThrow()
                .setupId();
        if (!store.add(adult.districtId(), classId, setup, day, adult.adultId())) {
            throw new Refused("block.meanwhile");
        }
    }

    /**
     * Says that a child is away today, or takes it back.
     *
     * @throws NotVisible when the class or child may not be seen
     */
    public void absent(UUID classId, UUID childId, boolean holds) {
        access.requireClass(classId);
        if (!roster.child(childId).classId().equals(classId)) {
            throw new NotVisible();
        }
        SignedIn adult = current.get();
        store.absent(adult.districtId(), classId, childId, current.today(), holds, adult.adultId());
    }

    /**
     * A turn at the table of the signed-in adult.
     *
     * @param starts first instant, the change before it not counted
     * @param ends first instant after it
     * @param group number of the group; {@code null} when nobody is there
     */
    public record AtTable(Instant starts, Instant ends, @Nullable Integer group) {}

    /**
     * Who is when at the table of the signed-in adult, on the running day of a class of which at least a part is seen:
     * at the station that bears the adult's name, else at the teacher table.
     */
    public List<AtTable> atTable(UUID classId) {
        if (roster.children(classId).isEmpty()) {
            return List.of();
        }
        LocalDate day = current.today();
        int station = store.setupOf(classId, day).map(setup -> setup.pattern().stationOf(current.get().name()))
                .orElse(BlockPattern.TEACHER_TABLE);
        return store.days(classId, day).stream().filter(d -> d.day().equals(day)).reduce((a, b) -> b).stream()
                .flatMap(d -> d.plan().turns().stream()).map(turn -> atTable(day, turn, turn.groupAt(station))).toList();
    }

    private AtTable atTable(LocalDate day, DayPlan.Turn turn, OptionalInt group) {
        return new AtTable(instant(day, turn.starts()), instant(day, turn.ends()),
                group.isPresent() ? group.getAsInt() : null);
    }

    private Instant instant(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(current.get().zone()).toInstant();
    }
}
