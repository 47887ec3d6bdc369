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
            new Question("phases of plans follow each other without a gap",
                    "select count(*) from plan_phase", gaps("plan_phase", "plan_id::text", "phase")),
            new Question("the looks a decision rested on are still there",
                    "select count(*) from tier_decision",
                    "select distinct d.decision_id::text from tier_decision d"
                            + " cross join lateral jsonb_array_elements_text(coalesce(d.evidence -> 'look_ids', '[]'))"
                            + " as look(id) where not exists (select from observation o"
                            + " where o.district_id = d.district_id and o.observation_id = look.id::uuid)"),
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
        List<Integrity.Answer> answers = new ArrayList<>();
        try (Connection connection = connections.eraser()) {
            connection.setAutoCommit(false);
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
            connection.setReadOnly(true);
            for (Question question : QUESTIONS) {
                answers.add(new Integrity.Answer(question.name(), count(connection, question.count()),
                        wrong(connection, question.wrong())));
            }
            connection.rollback();
        } catch (SQLException failed) {
            throw new IllegalStateException("the store could not be read to the end", failed);
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
