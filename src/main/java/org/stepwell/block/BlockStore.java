package org.stepwell.block;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.DayPlan;
import org.stepwell.core.rotation.DayPlan.Turn;
import org.stepwell.core.rotation.LostTime;
import org.stepwell.core.rotation.Station;
import org.stepwell.core.rotation.Stop;

/** Set-ups and days of the block, added and never changed. */
@Repository
class BlockStore {
    private static final String BEGUN = "start";
    private static final DayPlan NO_TURNS = new DayPlan(List.of());

    private final JdbcClient jdbc;

    BlockStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A saved set-up. */
    record Setup(UUID setupId, BlockPattern pattern) {}

    Optional<Setup> setup(UUID classId) {
        return jdbc.sql("""
                select setup_id, minutes, change_minutes, starts_at, rotations, visits from block_setup
                where class_id = :class order by saved_at desc limit 1""").param("class", classId)
                .query((row, n) -> setup(row)).optional();
    }

    private Setup setup(ResultSet row) throws SQLException {
        UUID id = row.getObject(1, UUID.class);
        Map<DayOfWeek, Integer> rotations = new EnumMap<>(DayOfWeek.class);
        Integer[] week = (Integer[]) row.getArray(5).getArray();
        for (DayOfWeek day : DayOfWeek.values()) {
            rotations.put(day, week[day.ordinal()]);
        }
        TreeMap<Integer, Integer> visits = new TreeMap<>();
        Integer[] wished = (Integer[]) row.getArray(6).getArray();
        IntStream.range(0, wished.length).filter(i -> wished[i] > 0).forEach(i -> visits.put(i + 1, wished[i]));
        return new Setup(id, new BlockPattern(stations(id), row.getInt(2), row.getInt(3),
                row.getObject(4, LocalTime.class), rotations, visits));
    }

    private List<Station> stations(UUID setup) {
        return jdbc.sql("select name, materials, adult from block_station where setup_id = :id order by position")
                .param("id", setup).query((row, n) -> new Station(row.getString(1), row.getString(2),
                        row.getString(3))).list();
    }

    UUID save(int district, UUID classId, BlockPattern pattern, UUID by) {
        UUID id = UUID.randomUUID();
        Integer[] week = Arrays.stream(DayOfWeek.values()).map(pattern::rotationsOn).toArray(Integer[]::new);
        int last = pattern.visits().isEmpty() ? 0 : pattern.visits().lastKey();
        Integer[] visits = IntStream.rangeClosed(1, last).mapToObj(g -> pattern.visits().getOrDefault(g, 0))
                .toArray(Integer[]::new);
        jdbc.sql("""
                insert into block_setup (district_id, setup_id, class_id, minutes, change_minutes, starts_at, rotations,
                    visits, saved_by)
                values (:d, :id, :class, :minutes, :change, :starts, :rotations, :visits, :by)""")
                .param("d", district).param("id", id).param("class", classId).param("minutes", pattern.minutes())
                .param("change", pattern.change()).param("starts", pattern.starts()).param("rotations", week)
                .param("visits", visits).param("by", by).update();
        for (int i = 0; i < pattern.stations().size(); i++) {
            Station station = pattern.stations().get(i);
            jdbc.sql("""
                    insert into block_station (district_id, setup_id, position, name, materials, adult)
                    values (:d, :id, :position, :name, :materials, :adult)""")
                    .param("d", district).param("id", id).param("position", i).param("name", station.name())
                    .param("materials", station.materials()).param("adult", station.adult()).update();
        }
        return id;
    }

    /** Every version of the days from one on, oldest first. */
    List<BlockDay> days(UUID classId, LocalDate from) {
        Map<BlockDay, List<Turn>> turns = new LinkedHashMap<>();
        jdbc.sql("""
                select d.day, d.version, d.seating_id, t.starts_at, t.minutes, t.paused, t.stations,
                       d.lost_from, d.lost_minutes, d.how, d.instead_of
                from block_day d left join block_turn t using (district_id, block_day_id)
                where d.class_id = :class and d.day >= :from order by d.day, d.version, t.turn_no""")
                .param("class", classId).param("from", from).query(row -> {
                    LocalTime lost = row.getObject(8, LocalTime.class);
                    List<Turn> own = turns.computeIfAbsent(new BlockDay(row.getObject(1, LocalDate.class), row.getInt(2),
                            row.getObject(3, UUID.class), NO_TURNS, way(row.getString(10)), lost == null ? null
                            : new Stop(lost, row.getInt(9)), row.getObject(11, Integer.class)), day -> new ArrayList<>());
                    // A day of which everything was dropped has no turn.
                    if (row.getObject(4) != null) {
                        own.add(new Turn(row.getObject(4, LocalTime.class), row.getInt(5), row.getInt(6),
                                List.of((Integer[]) row.getArray(7).getArray())));
                    }
                });
        return turns.entrySet().stream().map(e -> new BlockDay(e.getKey().day(), e.getKey().version(),
                e.getKey().seatingId(), new DayPlan(e.getValue()), e.getKey().way(), e.getKey().stop(),
                e.getKey().insteadOf())).toList();
    }

    private static @Nullable LostTime way(String how) {
        return how.equals(BEGUN) ? null : LostTime.valueOf(how.toUpperCase(Locale.ROOT));
    }

    /** Days with a block before one. */
    int count(UUID classId, LocalDate before) {
        return jdbc.sql("select count(distinct day) from block_day where class_id = :class and day < :day")
                .param("class", classId).param("day", before).query(Integer.class).single();
    }

    /** Adds a version; false when that version is there already. */
    boolean add(int district, UUID classId, UUID setup, BlockDay day, UUID by) {
        UUID id = UUID.randomUUID();
        boolean added = jdbc.sql("""
                insert into block_day (district_id, block_day_id, class_id, day, version, setup_id, seating_id, how,
                    lost_from, lost_minutes, instead_of, saved_by)
                values (:d, :id, :class, :day, :version, :setup, :seating, :how, :from, :lost, :instead, :by)
                on conflict on constraint block_day_once do nothing""")
                .param("d", district).param("id", id).param("class", classId).param("day", day.day())
                .param("version", day.version()).param("setup", setup).param("seating", day.seatingId())
                .param("how", day.way() == null ? BEGUN : day.way().name().toLowerCase(Locale.ROOT)).param("from", day.stop() == null ? null : day.stop().from())
                .param("lost", day.stop() == null ? 0 : day.stop().minutes())
                .param("instead", day.insteadOf()).param("by", by).update() == 1;
        for (int i = 0; added && i < day.plan().turns().size(); i++) {
            Turn turn = day.plan().turns().get(i);
            jdbc.sql("""
                    insert into block_turn (district_id, block_day_id, turn_no, starts_at, minutes, paused, stations)
                    values (:d, :id, :no, :starts, :minutes, :paused, :stations)""")
                    .param("d", district).param("id", id).param("no", i + 1).param("starts", turn.starts())
                    .param("minutes", turn.minutes()).param("paused", turn.paused())
                    .param("stations", turn.stations().toArray(Integer[]::new)).update();
        }
        return added;
    }

    /** Set-up that the last version of a day was made from. */
    Optional<Setup> setupOf(UUID classId, LocalDate day) {
        return jdbc.sql("""
                select setup_id, minutes, change_minutes, starts_at, rotations, visits
                from block_setup join (select district_id, setup_id from block_day
                    where class_id = :class and day = :day order by version desc limit 1) last
                    using (district_id, setup_id)""").param("class", classId).param("day", day)
                .query((row, n) -> setup(row)).optional();
    }

    void absent(int district, UUID classId, UUID child, LocalDate day, boolean holds, UUID by) {
        jdbc.sql("""
                insert into block_absence (district_id, class_id, child_id, day, holds, recorded_by)
                values (:d, :class, :child, :day, :holds, :by)""")
                .param("d", district).param("class", classId).param("child", child).param("day", day)
                .param("holds", holds).param("by", by).update();
    }

    /** Who was away on the days from one on, by day, by the school's own id. */
    Map<LocalDate, Set<String>> absent(UUID classId, LocalDate from) {
        Map<LocalDate, Set<String>> away = new TreeMap<>();
        jdbc.sql("""
                select day, school_key from (
                    select distinct on (a.day, a.child_id) a.day, c.school_key, a.holds
                    from block_absence a join child c using (district_id, child_id)
                    where a.class_id = :class and a.day >= :from
                    order by a.day, a.child_id, a.recorded_at desc) newest
                where holds""").param("class", classId).param("from", from)
                .query((row, n) -> Map.entry(row.getObject(1, LocalDate.class), row.getString(2))).list()
                .forEach(e -> away.computeIfAbsent(e.getKey(), day -> new HashSet<>()).add(e.getValue()));
        return away;
    }
}
