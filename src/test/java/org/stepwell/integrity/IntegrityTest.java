package org.stepwell.integrity;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.stepwell.TestDatabase;

/** Damage done behind the program's back, by the one user who can, is found. */
class IntegrityTest {
    private static final String CONTENT = "{\"children\":[]}";
    private final UUID review = UUID.randomUUID();
    private final UUID child = UUID.randomUUID();
    private TestDatabase database;

    @BeforeEach
    void opensAStoreWithAClosedReview() throws SQLException {
        database = TestDatabase.fresh();
        UUID school = UUID.randomUUID();
        UUID adult = UUID.randomUUID();
        UUID room = UUID.randomUUID();
        UUID unit = UUID.randomUUID();
        damage("insert into district (district_id, name) values (5, 'Hill')",
                "insert into school (district_id, school_id, name, time_zone) values (5, '" + school
                        + "', 'Hill', 'America/Chicago')",
                "insert into adult (district_id, adult_id, school_id, sign_in, name) values (5, '" + adult + "', '"
                        + school + "', 'ana@hill', 'Ana Ruiz')",
                "insert into child (district_id, child_id, school_key, given_name) values (5, '" + child
                        + "', 'k1', 'Ilse')",
                "insert into classroom (district_id, class_id, school_id, name) values (5, '" + room + "', '" + school
                        + "', 'Room 1')",
                "set session_replication_role = replica",
                "insert into review (district_id, review_id, class_id, unit_id, week, opened_by) values (5, '" + review
                        + "', '" + room + "', '" + unit + "', '2026-03-02', '" + adult + "')",
                "insert into review_choice (district_id, review_id, child_id, turn, choice, tier, suggested, verdict,"
                        + " chosen_by) values (5, '" + review + "', '" + child
                        + "', 1, 'keep', 'on_level', 'on_level', 'stay', '" + adult + "')",
                "insert into review_seal (district_id, review_id, sealed_on, content, digest, sealed_by) values (5, '"
                        + review + "', '2026-03-06', '" + CONTENT + "', encode(sha256(convert_to('" + CONTENT
                        + "', 'UTF8')), 'hex'), '" + adult + "')",
                "insert into home_note (district_id, child_id, language, version, state, note_on, parts, written_by)"
                        + " values (5, '" + child + "', 'en', 1, 'draft', '2026-03-02', '{}', '" + adult + "'),"
                        + " (5, '" + child + "', 'en', 2, 'draft', '2026-03-02', '{}', '" + adult + "')");
    }

    @AfterEach
    void closes() {
        database.close();
    }

    private void damage(String... statements) throws SQLException {
        try (Connection all = database.superuser(); Statement statement = all.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    private List<String> broken() {
        Map<String, List<String>> wrong = new IntegrityStore(database.ownerConnections()).answers().stream()
                .filter(answer -> !answer.wrong().isEmpty())
                .collect(Collectors.toMap(Integrity.Answer::question, Integrity.Answer::wrong));
        return wrong.entrySet().stream().map(e -> e.getKey() + ": " + e.getValue().getFirst()).sorted().toList();
    }

    @Test
    void aStoreAsItWasWrittenHolds() {
        assertThat(broken()).isEmpty();
        assertThat(new IntegrityStore(database.ownerConnections()).answers()).filteredOn(
                answer -> answer.question().startsWith("closed reviews have"))
                .singleElement().satisfies(answer -> assertThat(answer.looked()).isEqualTo(1));
        assertThat(new IntegrityStore(database.ownerConnections()).answers())
                .filteredOn(answer -> answer.question().startsWith("every table"))
                .singleElement().satisfies(answer -> assertThat(answer.looked()).isGreaterThan(20));
    }

    @Test
    void oneLetterChangedInASealedReviewIsFound() throws SQLException {
        damage("set session_replication_role = replica",
                "update review_seal set content = replace(content, '[]', '[ ]')");
        assertThat(broken()).containsExactly("closed reviews have the content they were sealed with: " + review);
    }

    @Test
    void aRemovedVersionAndATurnBehindTheSealAreFound() throws SQLException {
        damage("set session_replication_role = replica", "delete from home_note where version = 1",
                "update review_choice set chosen_at = now() + interval '1 day', turn = 3");
        assertThat(broken()).containsExactly(
                "closed reviews took no choice after the seal: " + review + " turn 3",
                "turns in reviews follow each other without a gap: " + review + " " + child,
                "versions of notes home follow each other without a gap: " + child + " en");
    }

    @Test
    void aLookThatADecisionRestedOnIsMissed() throws SQLException {
        UUID gone = UUID.randomUUID();
        damage("set session_replication_role = replica",
                "insert into tier_decision (district_id, unit_id, child_id, as_of, from_tier, to_tier, choice, evidence,"
                        + " decided_by) select 5, gen_random_uuid(), '" + child + "', '2026-03-02', 'on_level',"
                        + " 'on_level', 'keep', '{\"look_ids\":[\"" + gone + "\"]}', adult_id from adult");
        assertThat(broken()).singleElement().asString().startsWith("the looks a decision rested on");
    }

    @Test
    void aWallTakenDownIsFound() throws SQLException {
        damage("alter table child no force row level security",
                "alter table observation disable trigger kept_as_written");
        assertThat(broken()).containsExactly(
                "every table of a district is under forced row-level security: child",
                "tables of facts refuse change: observation");
    }
}
