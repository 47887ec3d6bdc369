package org.stepwell.check;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.check.Mark;

/** Checks and their marks, added and never changed; the highest number or revision holds. */
@Repository
class CheckStore {
    private static final String LINES = """
            select c.check_id, c.unit_id, u.title, c.title, c.held_on, c.retake_of, k.check_id is not null, u.class_id
            from unit_check c join unit u using (district_id, unit_id)
            left join check_counted k using (district_id, check_id)
            """;

    private final JdbcClient jdbc;

    CheckStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Unit(UUID unitId, String title, LocalDate startsOn) {}

    record OfClass(CheckLine line, UUID classId) {}

    /** The look that speaks for a cell now; {@code says} is empty when it was taken back. */
    record Spoken(int number, UUID lookId, String says) {}

    Optional<Unit> unit(UUID classId) {
        return jdbc.sql("select unit_id, title, starts_on from unit where class_id = :class"
                + " order by starts_on desc, created_at desc limit 1").param("class", classId)
                .query((row, n) -> new Unit(row.getObject(1, UUID.class), row.getString(2),
                        row.getObject(3, LocalDate.class))).optional();
    }

    /** Highest step each skill of the unit comes to, by skill; skills whose expectation ends are left out. */
    Map<String, Integer> unitSteps(UUID unitId) {
        Map<String, Integer> steps = new LinkedHashMap<>();
        jdbc.sql("""
                select skill, max(expected_step) from pacing where unit_id = :unit
                  and revision = (select max(revision) from pacing where unit_id = :unit)
                group by skill having (array_agg(expected_step order by due desc))[1] is not null order by skill""").param("unit", unitId)
                .query((row, n) -> Map.entry(row.getString(1), row.getInt(2))).list()
                .forEach(e -> steps.put(e.getKey(), e.getValue()));
        return steps;
    }

    List<CheckLine> ofClass(UUID classId) {
        return jdbc.sql(LINES + "where u.class_id = :class order by c.held_on desc, c.created_at desc")
                .param("class", classId).query((row, n) -> line(row).line()).list();
    }

    Optional<OfClass> find(UUID checkId) {
        return jdbc.sql(LINES + "where c.check_id = :check").param("check", checkId)
                .query((row, n) -> line(row)).optional();
    }

    private static OfClass line(ResultSet row) throws SQLException {
        return new OfClass(new CheckLine(row.getObject(1, UUID.class), row.getObject(2, UUID.class), row.getString(3),
                row.getString(4), row.getObject(5, LocalDate.class), row.getObject(6, UUID.class), row.getBoolean(7)),
                row.getObject(8, UUID.class));
    }

    UUID add(int district, UUID unitId, String title, LocalDate heldOn, @Nullable UUID retakeOf, UUID by) {
        return jdbc.sql("insert into unit_check (district_id, unit_id, title, held_on, retake_of, created_by)"
                + " values (:d, :unit, :title, :on, :of, :by) returning check_id").param("d", district)
                .param("unit", unitId).param("title", title).param("on", heldOn).param("of", retakeOf).param("by", by)
                .query(UUID.class).single();
    }

    List<CheckItem> items(UUID checkId) {
        return jdbc.sql("""
                select code, skill, step, question, answer from check_item where check_id = :check
                  and revision = (select max(revision) from check_item where check_id = :check) order by position""")
                .param("check", checkId).query((row, n) -> new CheckItem(row.getString(1), row.getString(2),
                        row.getInt(3), row.getString(4), row.getString(5))).list();
    }

    int revision(UUID checkId) {
        return jdbc.sql("select coalesce(max(revision), 0) from check_item where check_id = :check")
                .param("check", checkId).query(Integer.class).single();
    }

    void addItems(int district, UUID checkId, int revision, List<CheckItem> items, UUID by) {
        int position = 1;
        for (CheckItem item : items) {
            jdbc.sql("""
                    insert into check_item (district_id, check_id, revision, position, code, skill, step, question,
                        answer, saved_by)
                    values (:d, :check, :revision, :position, :code, :skill, :step, :question, :answer, :by)""")
                    .param("d", district).param("check", checkId).param("revision", revision)
                    .param("position", position++).param("code", item.code()).param("skill", item.skill())
                    .param("step", item.step()).param("question", item.question()).param("answer", item.answer())
                    .param("by", by).update();
        }
    }

    List<CheckCell> cells(UUID checkId, Collection<UUID> children) {
        return jdbc.sql("""
                select distinct on (m.child_id, m.item, m.entry) m.child_id, m.item, m.entry, m.number, m.mark, m.error,
                       a.name
                from check_mark m join adult a on a.district_id = m.district_id and a.adult_id = m.recorded_by
                where m.check_id = :check and m.child_id = any (:children)
                order by m.child_id, m.item, m.entry, m.number desc""")
                .param("check", checkId).param("children", children.toArray(UUID[]::new))
                .query((row, n) -> new CheckCell(row.getObject(1, UUID.class), row.getString(2), row.getInt(3),
                        row.getInt(4), Mark.of(row.getString(5)), row.getString(6), row.getString(7))).list();
    }

    /** Adds a mark with its number; says no when somebody else's has that number already. */
    boolean addMark(int district, UUID checkId, UUID childId, String item, int entry, int number, Mark mark,
            @Nullable String error, UUID by) {
        return jdbc.sql("""
                insert into check_mark (district_id, check_id, child_id, item, entry, number, mark, error, recorded_by)
                values (:d, :check, :child, :item, :entry, :number, :mark, :error, :by)
                on conflict (district_id, check_id, child_id, item, entry, number) do nothing""")
                .param("d", district).param("check", checkId).param("child", childId).param("item", item)
                .param("entry", entry).param("number", number).param("mark", mark.code()).param("error", error)
                .param("by", by).update() == 1;
    }

    Map<UUID, CheckSitting> sittings(UUID checkId) {
        Map<UUID, CheckSitting> sittings = new LinkedHashMap<>();
        jdbc.sql("""
                select distinct on (child_id) child_id, absent, sat_on, accommodation from check_sitting
                where check_id = :check order by child_id, number desc""").param("check", checkId)
                .query((row, n) -> Map.entry(row.getObject(1, UUID.class), new CheckSitting(row.getBoolean(2),
                        row.getObject(3, LocalDate.class), row.getString(4)))).list()
                .forEach(e -> sittings.put(e.getKey(), e.getValue()));
        return sittings;
    }

    void addSitting(int district, UUID checkId, UUID childId, CheckSitting sitting, UUID by) {
        jdbc.sql("""
                insert into check_sitting (district_id, check_id, child_id, number, absent, sat_on, accommodation,
                    recorded_by)
                select :d, :check, :child, coalesce(max(number), 0) + 1, :absent, :on, :words, :by from check_sitting
                where check_id = :check and child_id = :child""")
                .param("d", district).param("check", checkId).param("child", childId)
                .param("absent", sitting.absent()).param("on", sitting.satOn())
                .param("words", sitting.accommodation()).param("by", by).update();
    }

    void count(int district, UUID checkId, UUID by) {
        jdbc.sql("insert into check_counted (district_id, check_id, counted_by) values (:d, :check, :by)"
                + " on conflict do nothing").param("d", district).param("check", checkId).param("by", by).update();
    }

    /** Makes whoever else works on the check wait until this transaction ends. */
    void hold(UUID checkId) {
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended(:check, 14))").param("check", checkId.toString())
                .query((row, n) -> 0).single();
    }

    Map<String, Spoken> spoken(UUID checkId, UUID childId) {
        Map<String, Spoken> looks = new LinkedHashMap<>();
        jdbc.sql("""
                select distinct on (item) item, number, look_id, says from check_look
                where check_id = :check and child_id = :child order by item, number desc""")
                .param("check", checkId).param("child", childId)
                .query((row, n) -> Map.entry(row.getString(1), new Spoken(row.getInt(2),
                        row.getObject(3, UUID.class), row.getString(4)))).list()
                .forEach(e -> looks.put(e.getKey(), e.getValue()));
        return looks;
    }

    void addSpoken(int district, UUID checkId, UUID childId, String item, Spoken look) {
        jdbc.sql("insert into check_look (district_id, check_id, child_id, item, number, look_id, says)"
                + " values (:d, :check, :child, :item, :number, :look, :says)").param("d", district)
                .param("check", checkId).param("child", childId).param("item", item).param("number", look.number())
                .param("look", look.lookId()).param("says", look.says()).update();
    }
}
