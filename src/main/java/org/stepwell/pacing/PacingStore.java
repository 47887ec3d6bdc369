package org.stepwell.pacing;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.pacing.PacingRow;
import org.stepwell.core.pacing.SchoolCalendar.Break;

/** Units, pacing and breaks; the highest revision holds. */
@Repository
class PacingStore {
    private final JdbcClient jdbc;

    PacingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Unit(UUID unitId, String title, LocalDate startsOn) {}

    Optional<Unit> unit(UUID classId) {
        return jdbc.sql("select unit_id, title, starts_on from unit where class_id = :class"
                + " order by starts_on desc, created_at desc limit 1").param("class", classId)
                .query((row, n) -> new Unit(row.getObject(1, UUID.class), row.getString(2),
                        row.getObject(3, LocalDate.class))).optional();
    }

    UUID addUnit(int districtId, UUID classId, String progression, String title, LocalDate from) {
        return jdbc.sql("insert into unit (district_id, class_id, progression_code, title, starts_on)"
                + " values (:d, :class, :progression, :title, :from) returning unit_id")
                .param("d", districtId).param("class", classId).param("progression", progression)
                .param("title", title).param("from", from).query(UUID.class).single();
    }

    List<PacingRow> pacing(UUID unitId) {
        return jdbc.sql("""
                select skill, taught_from, due, expected_step from pacing where unit_id = :unit
                  and revision = (select max(revision) from pacing where unit_id = :unit) order by skill, due""")
                .param("unit", unitId)
                .query((row, n) -> new PacingRow(row.getString(1), row.getObject(2, LocalDate.class),
                        row.getObject(3, LocalDate.class), row.getObject(4, Integer.class))).list();
    }

    void addPacing(int districtId, UUID unitId, List<PacingRow> rows) {
        int revision = jdbc.sql("select coalesce(max(revision), 0) + 1 from pacing where unit_id = :unit")
                .param("unit", unitId).query(Integer.class).single();
        for (PacingRow row : rows) {
            jdbc.sql("insert into pacing (district_id, unit_id, revision, skill, taught_from, due, expected_step)"
                    + " values (:d, :unit, :revision, :skill, :taught, :due, :step)")
                    .param("d", districtId).param("unit", unitId).param("revision", revision)
                    .param("skill", row.skill()).param("taught", row.taughtFrom()).param("due", row.due())
                    .param("step", row.expectedStep()).update();
        }
    }

    List<Break> breaks(UUID classId) {
        return jdbc.sql("""
                select from_on, to_on, reason from school_break where class_id = :class
                  and revision = (select max(revision) from school_break where class_id = :class) order by from_on""")
                .param("class", classId)
                .query((row, n) -> new Break(row.getObject(1, LocalDate.class), row.getObject(2, LocalDate.class),
                        row.getString(3))).list();
    }

    void addBreaks(int districtId, UUID classId, List<Break> rows) {
        int revision = jdbc.sql("select coalesce(max(revision), 0) + 1 from school_break where class_id = :class")
                .param("class", classId).query(Integer.class).single();
        for (Break row : rows) {
            jdbc.sql("insert into school_break (district_id, class_id, revision, from_on, to_on, reason)"
                    + " values (:d, :class, :revision, :from, :to, :reason)")
                    .param("d", districtId).param("class", classId).param("revision", revision)
                    .param("from", row.from()).param("to", row.to()).param("reason", row.reason()).update();
        }
    }
}
