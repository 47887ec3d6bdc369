package org.stepwell.records;

import java.util.Locale;
import java.util.Map;

/**
 * A kind of record on a child and the one table it stands in: what of it a parent may inspect, and what erasure does to
 * it. A test reads the live schema and fails on a table with a child that is neither here nor in {@link #LEFT_OUT}.
 */
enum RecordKind {
    CHILD("child", "created_at"),
    ENROLMENTS("enrolment", "starts_on"),
    LOOKS("observation", "recorded_at"),
    WAITING_LOOKS("waiting_verdict", "decided_at", """
            t.observation_id in (select o.observation_id from observation o where o.child_id = :child)"""),
    DECISIONS("tier_decision", "decided_at"),
    REVIEW_CHOICES("review_choice", "chosen_at"),
    CONCERNS("concern", "recorded_at"),
    DOSES("dose", "recorded_at"),
    PLANS("plan", "started_at"),
    PLAN_PHASES("plan_phase", "written_at", RecordKind.OF_PLAN),
    PLAN_SESSIONS("plan_session", "logged_at", RecordKind.OF_PLAN),
    PLAN_ENDS("plan_end", "ended_at", RecordKind.OF_PLAN),
    NOTES_HOME("home_note", "written_at"),
    HELP_LETTERS("help_letter", "written_at"),
    FAMILY_TALKS("family_talk", "written_at"),
    FAMILY_TALK_STEPS("family_talk_step", "written_at", """
            t.talk_id in (select f.talk_id from family_talk f where f.child_id = :child)"""),
    COMMENTS("caseload_comment", "written_at"),
    SHARINGS("caseload_grant", "created_at"),
    FAMILY_REQUESTS("family_request", "asked_on"),
    FAMILY_REQUEST_STEPS("family_request_step", "recorded_at", """
            t.request_id in (select r.request_id from family_request r where r.child_id = :child)"""),
    CHECK_MARKS("check_mark", "recorded_at", RecordKind.OF_CHILD, RecordKind.WITH_CHECK),
    CHECK_SITTINGS("check_sitting", "recorded_at", RecordKind.OF_CHILD, RecordKind.WITH_CHECK),
    CHECK_LOOKS("check_look", "written_at"),
    CONFERENCE_TIMES("conference_slot", "version, place", RecordKind.OF_CHILD, """
            select t.*, s.version, s.written_by, s.written_at
            from %s t join conference_schedule s using (district_id, schedule_id)"""),
    CONFERENCE_ARRIVALS("conference_arrival", "recorded_at"),
    GROUPS("seating_place", "saved_at", RecordKind.OF_CHILD, """
            select s.for_on, s.kind, t.*, s.saved_by, s.saved_at
            from %s t join seating s using (district_id, seating_id)"""),
    /** With whom a child should or should not sit names the other one, who is left out: 34 CFR 99.12 (a). */
    WISHES("grouping_wish", "recorded_at", ":child in (t.child_id, t.other_child_id)", """
            select t.wish_id, t.class_id, t.kind, t.rotation, t.holds, t.recorded_by, t.recorded_at from %s t"""),
    /**
     * The other children of the choice, and how many had or had not, are left out: 34 CFR 99.12 (a). Erasure takes the
     * child out and leaves the choice, which is of the class.
     */
    LESSON_CHOICES("lesson_choice", "decided_at", ":child = any(t.children)", """
            select t.on_day, t.lesson_id, t.choice, t.decided_by, t.decided_at from %s t"""),
    TABLE_TASKS("table_task", "made_at"),
    BLOCK_ABSENCES("block_absence", "recorded_at"),
    /**
     * Told by the record of access itself, which knows the child only by a digest. Its lines outlive erasure, and name
     * nobody when the key is gone.
     */
    ACCESS("access_entry", "seq", "false");

    /** Tables with a child that no bundle holds, and why. Erasure removes the key and rewrites the seal. */
    static final Map<String, String> LEFT_OUT = Map.of(
            "access_key", "a secret that ties the record of access to the child, not a record on the child",
            "review_seal", "holds the whole class; what it says of the child stands in review choices and decisions");

    private static final String OF_CHILD = "t.child_id = :child";
    private static final String OF_PLAN = "t.plan_id in (select p.plan_id from plan p where p.child_id = :child)";
    private static final String WITH_CHECK =
            "select c.title, c.held_on, t.* from %s t join unit_check c using (district_id, check_id)";

    private final String table;
    private final String order;
    private final String where;
    private final String select;

    RecordKind(String table, String order) {
        this(table, order, RecordKind.OF_CHILD);
    }

    RecordKind(String table, String order, String where) {
        this(table, order, where, "select t.* from %s t");
    }

    RecordKind(String table, String order, String where, String select) {
        this.table = table;
        this.order = order;
        this.where = where;
        this.select = select;
    }

    /** The table. */
    String table() {
        return table;
    }

    /** Which rows are on {@code :child}, of the table as {@code t}. */
    String where() {
        return where;
    }

    /** Reads the rows of {@code :child}, oldest first. */
    String sql() {
        return select.formatted(table) + " where " + where + " order by " + order;
    }

    /** Counts the rows of {@code :child} in {@code :district}. */
    String count() {
        return "select count(*) from " + table + " t where t.district_id = :district and " + where;
    }

    /** Whether erasure removes the rows; else they are of more than the child, and it is taken out of them. */
    boolean removed() {
        return this != LESSON_CHOICES && this != ACCESS;
    }

    /** Removes the rows of {@code :child} in {@code :district}. */
    String removal() {
        return "delete from " + table + " t where t.district_id = :district and " + where;
    }

    /** Its name in files and in the texts of screens: {@code plan_phases}. */
    String code() {
        return name().toLowerCase(Locale.ROOT);
    }
}
