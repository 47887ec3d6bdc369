package org.stepwell.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.plan.PlannedSessions.Outcome;

/** Plans, phases, sessions and ends; rows are added and never changed. */
@Repository
class PlanStore {
    private final JdbcClient jdbc;

    PlanStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private record Row(UUID planId, boolean support, LocalDate startedOn, @Nullable LocalDate endedOn,
            String outcome, String words) {}

    /** All plans of a child, oldest first. */
    List<Plan> plans(UUID childId) {
        List<Row> rows = jdbc.sql("""
                select p.plan_id, p.kind = 'support', p.started_on, e.ended_on, coalesce(e.outcome, ''),
                       coalesce(e.words, '')
                from plan p left join plan_end e using (district_id, plan_id)
                where p.child_id = :child order by p.started_on, p.started_at""").param("child", childId)
                .query((row, n) -> new Row(row.getObject(1, UUID.class), row.getBoolean(2),
                        row.getObject(3, LocalDate.class), row.getObject(4, LocalDate.class), row.getString(5),
                        row.getString(6))).list();
        List<Plan> plans = new ArrayList<>();
        for (Row row : rows) {
            plans.add(new Plan(row.planId(), childId, row.support(), row.startedOn(), phases(row.planId()),
                    sessions(row.planId()), row.endedOn(), row.outcome(), row.words()));
        }
        return plans;
    }

    List<UUID> withPlan(Collection<UUID> children) {
        return jdbc.sql("select distinct child_id from plan where child_id = any (:children)")
                .param("children", children.toArray(UUID[]::new)).query(UUID.class).list();
    }

    private List<PlanTerms> phases(UUID planId) {
        return jdbc.sql("""
                select from_on, skill, goal_start, goal_step, goal_share, goal_by, given_by, per_week, minutes, review_on,
                       activity
                from plan_phase where plan_id = :plan order by from_on, phase""").param("plan", planId)
                .query((row, n) -> new PlanTerms(row.getObject(1, LocalDate.class), row.getString(2), row.getInt(3),
                        row.getInt(4), row.getInt(5), row.getObject(6, LocalDate.class), row.getString(7),
                        row.getInt(8), row.getInt(9), row.getObject(10, LocalDate.class), row.getString(11))).list();
    }

    private List<Plan.Held> sessions(UUID planId) {
        return jdbc.sql("""
                select s.session_id, s.held_on, s.outcome, s.minutes, s.words, a.name
                from plan_session s join adult a on a.district_id = s.district_id and a.adult_id = s.logged_by
                where s.plan_id = :plan and not s.withdrawn and not exists (select from plan_session later
                    where later.district_id = s.district_id and later.replaces = s.session_id)
                order by s.held_on, s.logged_at""").param("plan", planId)
                .query((row, n) -> new Plan.Held(row.getObject(1, UUID.class), row.getObject(2, LocalDate.class),
                        Outcome.of(row.getString(3)), row.getInt(4), row.getString(5), row.getString(6))).list();
    }

    UUID start(int districtId, UUID childId, boolean support, LocalDate on, UUID by) {
        return jdbc.sql("""
                insert into plan (district_id, child_id, kind, started_on, started_by)
                values (:d, :child, :kind, :on, :by) returning plan_id""")
                .param("d", districtId).param("child", childId).param("kind", support ? "support" : "extension")
                .param("on", on).param("by", by).query(UUID.class).single();
    }

    /** Adds a phase; {@code false} when another adult added one of that number first. */
    boolean phase(int districtId, UUID planId, int number, PlanTerms terms, UUID by) {
        return jdbc.sql("""
                insert into plan_phase (district_id, plan_id, phase, from_on, skill, goal_start, goal_step, goal_share,
                    goal_by, given_by, per_week, minutes, review_on, activity, written_by)
                values (:d, :plan, :phase, :from, :skill, :start, :step, :share, :until, :given, :week, :minutes,
                    :review, :activity, :by) on conflict do nothing""")
                .param("d", districtId).param("plan", planId).param("phase", number).param("from", terms.from())
                .param("skill", terms.skill()).param("start", terms.start()).param("step", terms.step())
                .param("share", terms.share()).param("until", terms.by()).param("given", terms.givenBy().strip())
                .param("week", terms.perWeek()).param("minutes", terms.minutes()).param("review", terms.reviewOn())
                .param("activity", terms.activity()).param("by", by).update() == 1;
    }

    /** Adds a session; sending the same id again does nothing. */
    void session(int districtId, UUID planId, Plan.Held held, @Nullable UUID replaces, boolean withdrawn, UUID by) {
        jdbc.sql("""
                insert into plan_session (district_id, session_id, plan_id, held_on, outcome, minutes, words, replaces,
                    withdrawn, logged_by)
                values (:d, :id, :plan, :on, :outcome, :minutes, :words, :replaces, :withdrawn, :by)
                on conflict do nothing""")
                .param("d", districtId).param("id", held.sessionId()).param("plan", planId).param("on", held.on())
                .param("outcome", held.outcome().code()).param("minutes", held.minutes())
                .param("words", held.words()).param("replaces", replaces).param("withdrawn", withdrawn)
                .param("by", by).update();
    }

    /** Ends a plan; {@code false} when it is ended already. */
    boolean end(int districtId, UUID planId, LocalDate on, String outcome, String words, UUID by) {
        return jdbc.sql("""
                insert into plan_end (district_id, plan_id, ended_on, outcome, words, ended_by)
                values (:d, :plan, :on, :outcome, :words, :by) on conflict do nothing""")
                .param("d", districtId).param("plan", planId).param("on", on).param("outcome", outcome)
                .param("words", words).param("by", by).update() == 1;
    }
}
