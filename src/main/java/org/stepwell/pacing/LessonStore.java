package org.stepwell.pacing;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.check.LessonStanding;
import org.stepwell.pacing.LessonChoice.Choice;

/** Lessons, choices and table tasks, added and never changed; the highest number holds. */
@Repository
class LessonStore {
    private final JdbcClient jdbc;

    LessonStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Lesson> lessons(UUID unitId) {
        return jdbc.sql("""
                select lesson_id, number, position, title, skills, step, materials, points, days from (
                    select distinct on (lesson_id) *, min(saved_at) over (partition by lesson_id) as first_saved
                    from lesson where unit_id = :unit order by lesson_id, number desc) newest
                where not removed order by position, first_saved, lesson_id""").param("unit", unitId)
                .query((row, n) -> lesson(row)).list();
    }

    private static Lesson lesson(ResultSet row) throws SQLException {
        return new Lesson(row.getObject(1, UUID.class), row.getInt(2), row.getInt(3), row.getString(4),
                List.of((String[]) row.getArray(5).getArray()), row.getObject(6, Integer.class), row.getString(7),
                row.getString(8), row.getInt(9));
    }

    /** Adds the next version of a lesson; says no when somebody else saved one first. */
    boolean add(int district, UUID unitId, Lesson lesson, boolean removed, UUID by) {
        return jdbc.sql("""
                insert into lesson (district_id, unit_id, lesson_id, number, position, title, skills, step, materials,
                    points, days, removed, saved_by)
                values (:d, :unit, :lesson, :number, :position, :title, :skills, :step, :materials, :points, :days,
                    :removed, :by)
                on conflict (district_id, unit_id, lesson_id, number) do nothing""")
                .param("d", district).param("unit", unitId).param("lesson", lesson.lessonId())
                .param("number", lesson.number() + 1).param("position", lesson.position())
                .param("title", lesson.title()).param("skills", lesson.skills().toArray(String[]::new))
                .param("step", lesson.step()).param("materials", lesson.materials()).param("points", lesson.points())
                .param("days", lesson.days()).param("removed", removed).param("by", by).update() == 1;
    }

    List<LessonChoice> choices(UUID unitId) {
        return jdbc.sql("""
                select distinct on (c.on_day) c.on_day, c.number, c.lesson_id, c.choice, c.children, c.moved, a.name
                from lesson_choice c join adult a on a.district_id = c.district_id and a.adult_id = c.decided_by
                where c.unit_id = :unit order by c.on_day, c.number desc""").param("unit", unitId)
                .query((row, n) -> new LessonChoice(row.getObject(1, LocalDate.class), row.getInt(2),
                        row.getObject(3, UUID.class), Choice.valueOf(row.getString(4).toUpperCase(Locale.ROOT)),
                        List.of((UUID[]) row.getArray(5).getArray()), row.getInt(6), row.getString(7))).list();
    }

    /** Adds a choice with its number; says no when somebody else chose first. */
    boolean add(int district, UUID unitId, LessonChoice choice, LessonStanding standing, UUID by) {
        return jdbc.sql("""
                insert into lesson_choice (district_id, unit_id, on_day, number, lesson_id, choice, children, has,
                    not_yet, not_seen, moved, decided_by)
                values (:d, :unit, :on, :number, :lesson, :choice, :children, :has, :notYet, :notSeen, :moved, :by)
                on conflict (district_id, unit_id, on_day, number) do nothing""")
                .param("d", district).param("unit", unitId).param("on", choice.day()).param("number", choice.number())
                .param("lesson", choice.lessonId()).param("choice", choice.choice().code())
                .param("children", choice.again().toArray(UUID[]::new)).param("has", standing.has().size())
                .param("notYet", standing.notYet().size())
                .param("notSeen", standing.notSeen().size() + standing.hidden().size())
                .param("moved", choice.moved()).param("by", by).update() == 1;
    }

    /** Tasks no look at the skill has ended yet, by when they were made. */
    List<TableTask> openTasks(UUID classId) {
        return jdbc.sql("""
                select t.child_id, t.skill, t.why, t.made_on from table_task t
                where t.class_id = :class and not exists (select 1 from observation o
                    where o.district_id = t.district_id and o.child_id = t.child_id and o.skill = t.skill
                      and o.kind <> 'unit_check' and not o.withdrawn and o.step is not null
                      and o.recorded_at > t.made_at and o.observed_on >= t.made_on)
                order by t.made_at, t.child_id, t.skill""").param("class", classId)
                .query((row, n) -> new TableTask(row.getObject(1, UUID.class), row.getString(2),
                        TableTask.Why.valueOf(row.getString(3).toUpperCase(Locale.ROOT)),
                        row.getObject(4, LocalDate.class))).list();
    }

    void add(int district, UUID classId, TableTask task, UUID by) {
        jdbc.sql("insert into table_task (district_id, class_id, child_id, skill, why, made_on, made_by)"
                + " values (:d, :class, :child, :skill, :why, :on, :by)").param("d", district)
                .param("class", classId).param("child", task.childId()).param("skill", task.skill())
                .param("why", task.why().code()).param("on", task.madeOn()).param("by", by).update();
    }
}
