package org.stepwell.grouping;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Kind;
import org.stepwell.grouping.Seating.Place;

/** Saved groups and wishes, added and never changed. */
@Repository
class GroupingStore {
    private static final String SEATING = "select s.seating_id, s.for_on, s.kind, a.name, s.saved_at from seating s"
            + " join adult a on a.district_id = s.district_id and a.adult_id = s.saved_by where s.class_id = :class";

    private final JdbcClient jdbc;

    GroupingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A wish as the table has it. */
    record WishRow(String kind, UUID child, @Nullable UUID other, @Nullable Integer rotation) {}

    UUID save(int district, UUID classId, LocalDate on, Kind kind, List<Group> groups, UUID by) {
        UUID id = UUID.randomUUID();
        jdbc.sql("""
                insert into seating (district_id, seating_id, class_id, for_on, kind, groups, saved_by)
                values (:d, :id, :class, :on, :kind, :groups, :by)""")
                .param("d", district).param("id", id).param("class", classId).param("on", on)
                .param("kind", kind.code()).param("groups", groups.size()).param("by", by).update();
        for (Group group : groups) {
            jdbc.sql("""
                    insert into seating_group (district_id, seating_id, group_no, skill, number, second_adult)
                    values (:d, :id, :no, :skill, :number, :second)""")
                    .param("d", district).param("id", id).param("no", group.number()).param("skill", group.skill())
                    .param("number", group.task()).param("second", group.secondAdult()).update();
        }
        return id;
    }

    void place(int district, UUID seating, UUID child, Place place) {
        jdbc.sql("""
                insert into seating_place (district_id, seating_id, child_id, group_no, pinned, reason)
                values (:d, :id, :child, :no, :pinned, :reason)""")
                .param("d", district).param("id", seating).param("child", child).param("no", place.group())
                .param("pinned", place.pinned()).param("reason", place.reason()).update();
    }

    /** What holds on a day: groups for that day alone, else the newest of those that go on; none or one. */
    List<Seating> on(UUID classId, LocalDate day) {
        return whole(jdbc.sql(SEATING + " and (s.kind = 'day' and s.for_on = :day"
                + " or s.kind <> 'day' and s.for_on <= :day) order by s.for_on desc, s.saved_at desc limit 1")
                .param("class", classId).param("day", day));
    }

    /** The newest of each first day before a day of those that went on, newest first. */
    List<Seating> before(UUID classId, LocalDate day, int most) {
        return whole(jdbc.sql("select * from (" + SEATING.replace("select ", "select distinct on (s.for_on) ")
                + " and s.kind <> 'day' and s.for_on < :day order by s.for_on, s.saved_at desc) newest"
                + " order by for_on desc limit :most").param("class", classId).param("day", day).param("most", most));
    }

    /** Those of the class with these ids. */
    List<Seating> of(UUID classId, Collection<UUID> ids) {
        return ids.isEmpty() ? List.of() : whole(jdbc.sql(SEATING + " and s.seating_id in (:ids)")
                .param("class", classId).param("ids", ids));
    }

    /** Everything ever saved, newest first. */
    List<Seating> history(UUID classId, int most) {
        return whole(jdbc.sql(SEATING + " order by s.saved_at desc limit :most").param("class", classId)
                .param("most", most));
    }

    private List<Seating> whole(JdbcClient.StatementSpec query) {
        List<Seating> bare = query.query((row, n) -> new Seating(row.getObject(1, UUID.class),
                row.getObject(2, LocalDate.class), Kind.of(row.getString(3)), List.of(), new TreeMap<>(),
                row.getString(4), row.getTimestamp(5).toInstant())).list();
        List<Seating> whole = new ArrayList<>();
        for (Seating one : bare) {
            whole.add(new Seating(one.seatingId(), one.forOn(), one.kind(), groups(one.seatingId()),
                    places(one.seatingId()), one.savedBy(), one.savedAt()));
        }
        return whole;
    }

    private List<Group> groups(UUID seating) {
        return jdbc.sql("select group_no, skill, number, second_adult from seating_group where seating_id = :id"
                + " order by group_no").param("id", seating).query((row, n) -> new Group(row.getInt(1),
                        row.getString(2), row.getString(3), row.getBoolean(4))).list();
    }

    private TreeMap<String, Place> places(UUID seating) {
        TreeMap<String, Place> places = new TreeMap<>();
        jdbc.sql("select c.school_key, p.group_no, p.pinned, p.reason from seating_place p join child c"
                + " using (district_id, child_id) where p.seating_id = :id").param("id", seating)
                .query((row, n) -> Map.entry(row.getString(1), new Place(row.getInt(2), row.getBoolean(3),
                        row.getString(4)))).list().forEach(e -> places.put(e.getKey(), e.getValue()));
        return places;
    }

    void wish(int district, UUID classId, WishRow wish, boolean holds, UUID by) {
        jdbc.sql("""
                insert into grouping_wish (district_id, class_id, kind, child_id, other_child_id, rotation, holds,
                    recorded_by)
                values (:d, :class, :kind, :child, :other, :rotation, :holds, :by)""")
                .param("d", district).param("class", classId).param("kind", wish.kind()).param("child", wish.child())
                .param("other", wish.other()).param("rotation", wish.rotation()).param("holds", holds)
                .param("by", by).update();
    }

    /** Wishes that hold, in the order in which they were first made. */
    List<WishRow> wishes(UUID classId) {
        return jdbc.sql("""
                select kind, child_id, other_child_id, rotation from (
                    select distinct on (kind, child_id, other_child_id, rotation) kind, child_id, other_child_id,
                        rotation, holds, recorded_at
                    from grouping_wish where class_id = :class
                    order by kind, child_id, other_child_id, rotation, recorded_at desc) newest
                where holds order by recorded_at""").param("class", classId)
                .query((row, n) -> new WishRow(row.getString(1), row.getObject(2, UUID.class),
                        row.getObject(3, UUID.class), row.getObject(4, Integer.class))).list();
    }
}
