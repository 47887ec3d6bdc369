package org.stepwell.integrity;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.stepwell.platform.store.OwnerConnections;

/** The questions, each as a count of what is looked at and a list of what is wrong. */
class IntegrityStore {
    private static final int MOST_NAMED = 20;

    private record Question(String name, String count, String wrong) {}

    private static final List<Question> QUESTIONS = List.of(
            new Question("closed reviews have the content they were sealed with",
                    "select count(*) from review_seal",
                    "select review_id::text from review_seal"
                            + " where encode(sha256(convert_to(content, 'UTF8')), 'hex') <> digest"),
            new Question("closed reviews took no choice after the seal",
                    "select count(*) from review_choice join review_seal using (district_id, review_id)",
                    "select c.review_id || ' turn ' || c.turn from review_choice c"
                            + " join review_seal s using (district_id, review_id) where c.chosen_at > s.sealed_at"),
            new Question("turns in reviews follow each other without a gap",
                    "select count(*) from review_choice",
                    gaps("review_choice", "review_id::text || ' ' || child_id::text", "turn")),
            new Question("versions of notes home follow each other without a gap",
                    "select count(*) from home_note",
                    gaps("home_note", "child_id::text || ' ' || language", "version")),
            new Question("versions of schedules of talks follow each other without a gap",
                    "select count(*) from conference_schedule",
                    gaps("conference_schedule", "class_id::text", "version")),
            new Question("phases of plans follow each other without a gap",
                    "select count(*) from plan_phase", gaps("plan_phase", "plan_id::text", "phase")),
            new Question("the looks a decision rested on are still there",
                    "select count(*) from tier_decision",
                    "select distinct d.decision_id::text from tier_decision d"
                            + " cross join lateral jsonb_array_elements_text(coalesce(d.evidence -> 'look_ids', '[]'))"
                            + " as look(id) where not exists (select from observation o"
                            + " where o.district_id = d.district_id and o.observation_id = look.id::uuid)"),
            new Question("lines of the record of access have the digest they were written with",
                    "select count(*) from access_entry",
                    "select district_id || ' line ' || seq from access_entry where digest <> encode(sha256(convert_to("
                            + "concat_ws('|', district_id, seq, (extract(epoch from at) * 1000000)::bigint, adult_id,"
                            + " what, outcome, party, interest, coalesce(grant_id::text, '-'), child_digest,"
                            + " previous), 'UTF8')), 'hex') order by district_id, seq"),
            new Question("lines of the record of access follow each other up to the newest",
                    "select count(*) from access_head",
                    "select district_id || ' line ' || seq from (select district_id, seq, previous,"
                            + " lag(seq, 1, 0::bigint) over w before, lag(digest, 1, '') over w digest"
                            + " from access_entry window w as (partition by district_id order by seq)) e"
                            + " where seq <> before + 1 or previous <> digest"
                            + " union all select h.district_id || ' end at ' || h.seq from access_head h"
                            + " left join (select distinct on (district_id) district_id, seq, digest from access_entry"
                            + " order by district_id, seq desc) e using (district_id)"
                            + " where (h.seq, h.digest) is distinct from (coalesce(e.seq, 0), coalesce(e.digest, ''))"
                            + " union all select distinct district_id || ' without an end' from access_entry"
                            + " where district_id not in (select district_id from access_head)"),
            new Question("every table of a district is under forced row-level security",
                    "select count(*) from pg_class c join pg_attribute a on a.attrelid = c.oid"
                            + " where a.attname = 'district_id' and c.relkind = 'r' and not a.attisdropped"
                            + " and c.relnamespace = current_schema()::regnamespace and c.relname <> 'sign_in'",
                    "select c.relname::text from pg_class c join pg_attribute a on a.attrelid = c.oid"
                            + " where a.attname = 'district_id' and c.relkind = 'r' and not a.attisdropped"
                            + " and c.relnamespace = current_schema()::regnamespace and c.relname <> 'sign_in'"
                            + " and not (c.relrowsecurity and c.relforcerowsecurity)"),
            new Question("tables of facts refuse change",
                    "select count(*) from pg_trigger where tgname = 'kept_as_written'",
                    "select tgrelid::regclass::text from pg_trigger"
                            + " where tgname = 'kept_as_written' and tgenabled = 'D'"));

    private final OwnerConnections connections;

    IntegrityStore(OwnerConnections connections) {
        this.connections = connections;
    }

    private static String gaps(String table, String of, String number) {
        return "select " + of + " from " + table + " group by district_id, 1 having max(" + number
                + ") <> count(*) or min(" + number + ") <> 1";
    }

    /** All answers from one moment. */
    List<Integrity.Answer> answers() {
        try (Connection connection = connections.eraser()) {
            connection.setAutoCommit(false);
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
            connection.setReadOnly(true);
            List<Integrity.Answer> answers = answers(connection, "");
            connection.rollback();
            return answers;
        } catch (SQLException failed) {
            throw new IllegalStateException("the store could not be read to the end", failed);
        }
    }

    /** The answers to questions that begin so, as the connection sees the store. */
    static List<Integrity.Answer> answers(Connection connection, String start) throws SQLException {
        List<Integrity.Answer> answers = new ArrayList<>();
        for (Question question : QUESTIONS) {
            if (question.name().startsWith(start)) {
                answers.add(new Integrity.Answer(question.name(), count(connection, question.count()),
                        wrong(connection, question.wrong())));
            }
        }
        return answers;
    }

    private static long count(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement(); ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    private static List<String> wrong(Connection connection, String sql) throws SQLException {
        List<String> wrong = new ArrayList<>();
        try (Statement statement = connection.createStatement()) {
            statement.setMaxRows(MOST_NAMED);
            try (ResultSet rows = statement.executeQuery(sql)) {
                while (rows.next()) {
                    wrong.add(rows.getString(1));
                }
            }
        }
        return wrong;
    }
}
