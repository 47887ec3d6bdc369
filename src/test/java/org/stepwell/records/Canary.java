package org.stepwell.records;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * A child with a row in every table that can hold one, and marks in them that stand nowhere else; beside it another
 * child of the class, who stays. In a district of its own.
 */
public final class Canary {
    /** The district. */
    public static final int DISTRICT = 77;
    /** The school's own id of the child. */
    public static final String KEY = mark(1);
    /** That of the child who stays. */
    public static final String OTHER_KEY = "stays-1";
    /** How many marks there are beside ids. */
    public static final int MARKS = 46;

    private final UUID child = UUID.fromString("5e1fca4a-0d1f-4c6b-9c1e-7a11c0ffee01");
    private final UUID other = UUID.fromString("0b0e6a52-77c1-4a57-8f0e-2f6b3d9a4c02");
    private final List<UUID> looks = List.of(UUID.fromString("5e1fca4a-1001-4c6b-9c1e-7a11c0ffee11"),
            UUID.fromString("5e1fca4a-1002-4c6b-9c1e-7a11c0ffee12"));
    private final Set<Integer> used = new LinkedHashSet<>();

    private static String mark(int n) {
        return "zq%02dcanary%02dxj".formatted(n, 97 - n);
    }

    private String m(int n) {
        used.add(n);
        return mark(n);
    }

    /** The child. */
    public UUID child() {
        return child;
    }

    /** Everything that must be found nowhere, as bytes: the marks, and the ids as text and as PostgreSQL keeps them. */
    public List<byte[]> marks() {
        List<byte[]> all = new ArrayList<>();
        for (int n = 1; n <= MARKS; n++) {
            all.add(mark(n).getBytes(StandardCharsets.UTF_8));
        }
        List<UUID> ids = new ArrayList<>(looks);
        ids.add(child);
        for (UUID id : ids) {
            all.add(id.toString().getBytes(StandardCharsets.UTF_8));
            all.add(ByteBuffer.allocate(16).putLong(id.getMostSignificantBits()).putLong(id.getLeastSignificantBits())
                    .array());
        }
        return all;
    }

    /** The same as texts, for looking through rows. */
    public List<String> texts() {
        List<String> all = new ArrayList<>(List.of(child.toString(), looks.get(0).toString(),
                looks.get(1).toString(), id("g")));
        for (int n = 1; n <= MARKS; n++) {
            all.add(mark(n));
        }
        return all;
    }

    /** Writes all rows by a connection that no policy binds. */
    public void plant(Connection superuser) throws SQLException {
        try (Statement statement = superuser.createStatement()) {
            for (String sql : rows().split(";\n")) {
                statement.execute(sql);
            }
            // The former name lives on in a dead row and in the write-ahead log.
            statement.execute("update child set given_name = '" + m(3) + "' where child_id = '" + child + "'");
        }
        if (used.size() != MARKS) {
            throw new AssertionError("marks used: " + used);
        }
    }

    private String rows() {
        return """
                insert into district (district_id, name) values ($d, 'Reed Hill');
                insert into school (district_id, school_id, name, time_zone) values ($d, '$s', 'Reed Hill', 'America/Chicago');
                insert into adult (district_id, adult_id, school_id, sign_in, name, lead)
                  values ($d, '$a', '$s', 'lead@reed', 'Ona Reed', true);
                insert into sign_in values ('lead@reed', $d, '$a');
                insert into classroom (district_id, class_id, school_id, name) values ($d, '$r', '$s', 'Room 1');
                insert into unit (district_id, unit_id, class_id, progression_code, title, starts_on)
                  values ($d, '$u', '$r', 'tens', 'Tens', '2026-03-02');
                insert into child (district_id, child_id, school_key, given_name, family_name)
                  values ($d, '$c', '%s', '%s', '%s'), ($d, '$o', 'stays-1', 'Bao', 'Lind');
                insert into enrolment (district_id, class_id, child_id, starts_on)
                  values ($d, '$r', '$c', '2026-03-02'), ($d, '$r', '$o', '2026-03-02');
                insert into conference_schedule (district_id, schedule_id, class_id, version, written_by)
                  values ($d, '$q', '$r', 1, '$a');
                insert into conference_slot (district_id, schedule_id, place, on_day, starts_at, minutes, pause, child_id)
                  values ($d, '$q', 1, '2026-03-12', '15:00', 15, false, '$c');
                insert into conference_arrival (district_id, child_id, on_day, household, outcome, recorded_by)
                  values ($d, '$c', '2026-03-12', 1, 'no_show', '$a');
                insert into caseload_grant (district_id, adult_id, child_id, reason, starts_on, ends_on)
                  values ($d, '$a', '$c', '%s', '2026-03-02', '2026-06-01');
                insert into observation (district_id, observation_id, child_id, class_id, skill, task, step, help, kind,
                  observer, recorded_by, tags, note, observed_at, observed_on, waiting_since)
                  values ($d, '$l1', '$c', '$r', 'T05', '%s', 2, 'none', 'table', '%s', '$a', '{%s}', '%s',
                    '2026-03-03T09:00:00-06:00', '2026-03-03', now()),
                    ($d, '$l2', '$c', '$r', '%s', '%s', 2, 'none', 'table', 'x', '$a', '{%s,%s}', '%s',
                    '2026-03-04T09:00:00-06:00', '2026-03-04', null),
                    ($d, '$x', '$o', '$r', 'T05', '14', 3, 'none', 'table', 'x', '$a', '{}', 'is seen',
                    '2026-03-04T09:00:00-06:00', '2026-03-04', null);
                insert into waiting_verdict (district_id, observation_id, taken, decided_by) values ($d, '$l1', true, '$a');
                insert into tier_decision (district_id, unit_id, child_id, as_of, from_tier, to_tier, choice, rules, reason,
                  evidence, decided_by) values ($d, '$u', '$c', '2026-03-06', 'on_level', 'support', 'other', '%s', '%s',
                  '{"look_ids": ["$l1", "$l2"], "words": "%s"}', '$a');
                insert into concern (district_id, child_id, kind, raised_on, words, recorded_by)
                  values ($d, '$c', 'concern', '2026-03-06', '%s', '$a');
                insert into dose (district_id, unit_id, child_id, as_of, planned, given, recorded_by)
                  values ($d, '$u', '$c', '2026-03-06', 3, 2, '$a');
                insert into plan (district_id, plan_id, child_id, kind, started_on, started_by)
                  values ($d, '$p', '$c', 'support', '2026-03-09', '$a');
                insert into plan_phase (district_id, plan_id, phase, from_on, skill, goal_start, goal_step, goal_share,
                  goal_by, given_by, per_week, minutes, review_on, activity, written_by)
                  values ($d, '$p', 1, '2026-03-09', '%s', 1, 3, 80, '2026-05-01', '%s', 3, 20, '2026-04-01', '%s', '$a');
                insert into plan_session (district_id, session_id, plan_id, held_on, outcome, minutes, words, logged_by)
                  values ($d, '$n1', '$p', '2026-03-10', 'given', 20, '%s', '$a');
                insert into plan_session (district_id, session_id, plan_id, held_on, outcome, minutes, words, replaces,
                  logged_by) values ($d, '$n2', '$p', '2026-03-10', 'given', 15, '%s', '$n1', '$a');
                insert into plan_end (district_id, plan_id, ended_on, outcome, words, ended_by)
                  values ($d, '$p', '2026-05-01', 'left', '%s', '$a');
                insert into home_note (district_id, child_id, language, version, state, note_on, parts, confirmed, written_by)
                  values ($d, '$c', 'en', 1, 'draft', '2026-03-20', '{"did": ["%s"], "next": ["%s"], "try": ["%s"]}',
                  '["%s"]', '$a');
                insert into caseload_comment (district_id, child_id, words, written_by) values ($d, '$c', '%s', '$a'),
                  ($d, '$c', '%s', '$a'), ($d, '$c', '%s', '$a');
                insert into family_request (district_id, request_id, child_id, kind, asked_on, words, recorded_by)
                  values ($d, '$q', '$c', 'amend', '2026-04-01', '%s', '$a');
                insert into family_request_step (district_id, request_id, step, kind, done_on, words, recorded_by)
                  values ($d, '$q', 1, 'refused', '2026-04-02', 'stands', '$a'),
                    ($d, '$q', 2, 'statement', '2026-04-03', '%s', '$a');
                insert into unit_check (district_id, check_id, unit_id, title, held_on, created_by)
                  values ($d, '$k', '$u', 'Check', '2026-04-03', '$a');
                insert into check_mark (district_id, check_id, child_id, item, entry, number, mark, error, recorded_by)
                  values ($d, '$k', '$c', '%s', 1, 1, 'wrong', '%s', '$a'), ($d, '$k', '$o', 'i01', 1, 1, 'right', null, '$a');
                insert into check_sitting (district_id, check_id, child_id, number, absent, sat_on, accommodation, recorded_by)
                  values ($d, '$k', '$c', 1, false, '2026-04-03', '%s', '$a');
                insert into check_look (district_id, check_id, child_id, item, number, look_id, says)
                  values ($d, '$k', '$c', 'i01', 1, '$l2', '%s');
                insert into seating (district_id, seating_id, class_id, for_on, kind, groups, saved_by)
                  values ($d, '$t', '$r', '2026-03-09', 'groups', 2, '$a');
                insert into seating_place (district_id, seating_id, child_id, group_no, reason)
                  values ($d, '$t', '$c', 1, '%s'), ($d, '$t', '$o', 2, 'works on tens');
                insert into grouping_wish (district_id, class_id, kind, child_id, other_child_id, recorded_by)
                  values ($d, '$r', 'apart', '$c', '$o', '$a'), ($d, '$r', 'together', '$o', '$c', '$a');
                insert into lesson_choice (district_id, unit_id, on_day, number, lesson_id, choice, children, has, not_yet,
                  not_seen, moved, decided_by)
                  values ($d, '$u', '2026-03-11', 1, '$n1', 'move_on_show_again', '{$c,$o}', 10, 2, 1, 0, '$a');
                insert into table_task (district_id, class_id, child_id, skill, why, made_on, made_by)
                  values ($d, '$r', '$c', '%s', 'show_again', '2026-03-12', '$a');
                insert into block_absence (district_id, class_id, child_id, day, holds, recorded_by)
                  values ($d, '$r', '$c', '2026-03-12', true, '$a');
                insert into review (district_id, review_id, class_id, unit_id, week, opened_by)
                  values ($d, '$v', '$r', '$u', '2026-03-02', '$a');
                insert into review_choice (district_id, review_id, child_id, turn, choice, tier, reason, suggested, verdict,
                  chosen_by) values ($d, '$v', '$c', 1, 'other', 'support', '%s', 'on_level', 'stay', '$a');
                insert into review_seal (district_id, review_id, sealed_on, content, digest, sealed_by)
                  select $d, '$v', '2026-03-06', content, encode(sha256(convert_to(content, 'UTF8')), 'hex'), '$a' from (values
                  ('{"children":[{"child_id":"$c","chance":0.75,"reason":"%s","teller":"%s"},{"child_id":"$o","chance":0.5}]}'))
                  seal(content);
                insert into access_key (district_id, child_id, key) values ($d, '$c', sha256('c')), ($d, '$o', sha256('o'));
                insert into help_letter (district_id, child_id, plan_id, language, version, state, letter_on, lines,
                  school_text, written_by) values ($d, '$c', '$p', 'en', 1, 'draft', '2026-03-10', '["%s"]', '%s', '$a');
                insert into family_talk (district_id, talk_id, child_id, held_on, said, agreed, written_by)
                  values ($d, '$g', '$c', '2026-03-11', '%s', '%s', '$a');
                insert into family_talk_step (district_id, talk_id, step, written_by) values ($d, '$g', 1, '$a')"""
                .formatted(m(1), m(2), m(4), m(5), m(6), m(7), m(8), m(9), m(10), m(11), m(12), m(13), m(14), m(15),
                        m(16), m(17), m(18), m(19), m(20), m(21), m(22), m(23), m(24), m(25), m(26), m(27), m(28),
                        m(29), m(30), m(31), m(32), m(33), m(34), m(35), m(36), m(37), m(38), m(39), m(40), m(41), m(42),
                        m(43), m(44), m(45), m(46))
                .replace("$d", Integer.toString(DISTRICT)).replace("$c", child.toString()).replace("$o", other.toString())
                .replace("$q", id("q"))
                .replace("$l1", looks.get(0).toString()).replace("$l2", looks.get(1).toString())
                .replace("$s", id("s")).replace("$a", id("a")).replace("$r", id("r")).replace("$u", id("u"))
                .replace("$x", id("x")).replace("$p", id("p")).replace("$n1", id("n1")).replace("$n2", id("n2"))
                .replace("$g", id("g")).replace("$k", id("k")).replace("$t", id("t")).replace("$v", id("v"));
    }

    private static String id(String of) {
        return UUID.nameUUIDFromBytes(("canary " + of).getBytes(StandardCharsets.UTF_8)).toString();
    }
}
