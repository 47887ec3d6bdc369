package org.stepwell.records;

import java.util.Locale;
import java.util.Map;

/**
 * A kind of record on a child and the one table it stands in. A test reads the live schema and fails on a table with a
 * child that is neither here nor in {@link #LEFT_OUT}.
 */
enum RecordKind {
    CHILD("child", "created_at"),
    ENROLMENTS("enrolment", "starts_on"),
    LOOKS("observation", "recorded_at"),
    WAITING_LOOKS("waiting_verdict", "decided_at", """
            select t.* from waiting_verdict t join observation o using (district_id, observation_id)
            where o.child_id = :child"""),
    DECISIONS("tier_decision", "decided_at"),
    REVIEW_CHOICES("review_choice", "chosen_at"),
    CONCERNS("concern", "recorded_at"),
    DOSES("dose", "recorded_at"),
    PLANS("plan", "started_at"),
    PLAN_PHASES("plan_phase", "written_at", """
            select t.* from plan_phase t join plan p using (district_id, plan_id) where p.child_id = :child"""),
    PLAN_SESSIONS("plan_session", "logged_at", """
            select t.* from plan_session t join plan p using (district_id, plan_id) where p.child_id = :child"""),
    PLAN_ENDS("plan_end", "ended_at", """
            select t.* from plan_end t join plan p using (district_id, plan_id) where p.child_id = :child"""),
    NOTES_HOME("home_note", "written_at"),
    COMMENTS("caseload_comment", "written_at"),
    SHARINGS("caseload_grant", "created_at"),
    CHECK_MARKS("check_mark", "recorded_at", """
            select c.title, c.held_on, t.* from check_mark t join unit_check c using (district_id, check_id)
            where t.child_id = :child"""),
    CHECK_SITTINGS("check_sitting", "recorded_at", """
            select c.title, c.held_on, t.* from check_sitting t join unit_check c using (district_id, check_id)
            where t.child_id = :child"""),
    CHECK_LOOKS("check_look", "written_at"),
    GROUPS("seating_place", "saved_at", """
            select s.for_on, s.kind, t.*, s.saved_by, s.saved_at
            from seating_place t join seating s using (district_id, seating_id) where t.child_id = :child"""),
    /** With whom a child should or should not sit names the other one, who is left out: 34 CFR 99.12 (a). */
    WISHES("grouping_wish", "recorded_at", """
            select t.wish_id, t.class_id, t.kind, t.rotation, t.holds, t.recorded_by, t.recorded_at
            from grouping_wish t where :child in (t.child_id, t.other_child_id)"""),
    /** The other children of the choice, and how many had or had not, are left out: 34 CFR 99.12 (a). */
    LESSON_CHOICES("lesson_choice", "decided_at", """
            select t.on_day, t.lesson_id, t.choice, t.decided_by, t.decided_at from lesson_choice t
            where :child = any(t.children)"""),
    TABLE_TASKS("table_task", "made_at"),
    BLOCK_ABSENCES("block_absence", "recorded_at"),
    /** Told by the record of access itself, which knows the child only by a digest. */
    ACCESS("access_entry", "seq", "");

    /** Tables with a child that no bundle holds, and why. */
    static final Map<String, String> LEFT_OUT = Map.of(
            "access_key", "a secret that ties the record of access to the child, not a record on the child",
            "review_seal", "holds the whole class; what it says of the child stands in review choices and decisions");

    private final String table;
    private final String order;
    private final String sql;

    RecordKind(String table, String order) {
        this(table, order, "select t.* from " + table + " t where t.child_id = :child");
    }

    RecordKind(String table, String order, String sql) {
        this.table = table;
        this.order = order;
        this.sql = sql;
    }

    /** The table. */
    String table() {
        return table;
    }

    /** Reads the rows of {@code :child}, oldest first. */
    String sql() {
        return sql + " order by " + order;
    }

    /** Its name in files and in the texts of screens: {@code plan_phases}. */
    String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
