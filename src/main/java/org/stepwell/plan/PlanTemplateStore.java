package org.stepwell.plan;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Templates of plans in versions; rows are added and never changed. */
@Repository
class PlanTemplateStore {
    private final JdbcClient jdbc;

    PlanTemplateStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The newest version of each template a school offers, by name. */
    List<PlanTemplate> offered(UUID schoolId) {
        return jdbc.sql("""
                select * from (
                    select distinct on (template_id) template_id, version, name, kind = 'support', skill, goal_step,
                           goal_share, goal_weeks, given_by, per_week, minutes, review_weeks, activity, retired
                    from plan_template where school_id = :school order by template_id, version desc) newest
                where not retired order by lower(name), template_id""").param("school", schoolId)
                .query((row, n) -> new PlanTemplate(row.getObject(1, UUID.class), row.getInt(2), row.getString(3),
                        row.getBoolean(4), row.getString(5), row.getInt(6), row.getInt(7), row.getInt(8),
                        row.getString(9), row.getInt(10), row.getInt(11), row.getInt(12), row.getString(13))).list();
    }

    /** Adds a version; {@code false} when another adult added it first. */
    boolean add(int districtId, UUID schoolId, PlanTemplate template, boolean retired, UUID by) {
        return jdbc.sql("""
                insert into plan_template (district_id, template_id, version, school_id, name, kind, skill, goal_step,
                    goal_share, goal_weeks, given_by, per_week, minutes, review_weeks, activity, retired, written_by)
                values (:d, :id, :version, :school, :name, :kind, :skill, :step, :share, :goal, :role, :week, :minutes,
                    :review, :activity, :retired, :by) on conflict do nothing""")
                .param("d", districtId).param("id", template.templateId()).param("version", template.version())
                .param("school", schoolId).param("name", template.name())
                .param("kind", template.support() ? "support" : "extension").param("skill", template.skill())
                .param("step", template.step()).param("share", template.share()).param("goal", template.goalWeeks())
                .param("role", template.role()).param("week", template.perWeek()).param("minutes", template.minutes())
                .param("review", template.reviewWeeks()).param("activity", template.activity())
                .param("retired", retired).param("by", by).update() == 1;
    }
}
