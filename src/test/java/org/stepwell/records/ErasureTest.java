package org.stepwell.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stepwell.TestDatabase;
import org.stepwell.core.problem.Refused;
import org.stepwell.integrity.Integrity;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;
import org.stepwell.platform.store.HomeSecrets;
import org.stepwell.records.Erasure.Why;

/** A child with a row in every table is taken out of all of them, found by looking through every row of the live schema. */
class ErasureTest {
    @TempDir
    Path home;
    private final Canary canary = new Canary();
    private TestDatabase database;
    private Erasure erasure;

    @BeforeEach
    void plants() throws SQLException {
        database = TestDatabase.fresh();
        try (Connection all = database.superuser()) {
            canary.plant(all);
        }
        erasure = Erasure.over(database.store(), HomeSecrets.of(Settings.from(
                Map.of("STEPWELL_HOME", home.toString())::get)));
    }

    @AfterEach
    void closes() {
        database.close();
    }

    private ErasureTarget target() {
        return erasure.withKey(Canary.KEY).getFirst();
    }

    /** Rows of each table that hold any of these texts, past every policy; tables without one are left out. */
    private Map<String, Integer> holding(List<String> texts) throws SQLException {
        Map<String, Integer> found = new TreeMap<>();
        try (Connection all = database.superuser(); Statement statement = all.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (ResultSet row = statement.executeQuery("select c.oid::regclass::text from pg_class c"
                    + " where c.relkind in ('r', 'p', 'm') and c.relnamespace = 'public'::regnamespace")) {
                while (row.next()) {
                    tables.add(row.getString(1));
                }
            }
            for (String table : tables) {
                try (ResultSet row = statement.executeQuery("select count(*) from " + table + " t where t::text like any ("
                        + texts.stream().map(text -> "'%" + text + "%'").collect(Collectors.joining(",", "array[", "]"))
                        + ")")) {
                    row.next();
                    if (row.getInt(1) > 0) {
                        found.put(table, row.getInt(1));
                    }
                }
            }
        }
        return found;
    }

    private String one(String sql) throws SQLException {
        try (Connection all = database.superuser(); Statement statement = all.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getString(1);
        }
    }

    private void verifies() {
        assertThat(Integrity.over(database.store()).check()).allSatisfy(answer -> assertThat(answer.wrong())
                .as(answer.question()).isEmpty());
    }

    /** A new kind of record has to be planted, too; else this says nothing of it. */
    @Test
    void itIsPlantedInEveryTableThatIsClaimed() throws SQLException {
        Set<String> claimed = new HashSet<>(RecordKind.LEFT_OUT.keySet());
        Arrays.stream(RecordKind.values()).filter(kind -> kind != RecordKind.ACCESS)
                .forEach(kind -> claimed.add(kind.table()));
        assertThat(holding(canary.texts()).keySet()).as("tables that Canary plants something in").containsAll(claimed);
    }

    @Test
    void noRowOfAnyTableHoldsAMarkAndTheStoreVerifies() throws SQLException {
        verifies();
        String others = one("select string_agg(t::text, ';' order by t::text) from (select school_key, given_name from child"
                + " where district_id = 77 and school_key = 'stays-1' union all select observation_id::text, note"
                + " from observation where note = 'is seen' union all select title, '' from unit_check"
                + " union all select reason, '' from seating_place where reason = 'works on tens') t");
        assertThat(erasure.preview(target()).rows()).hasSizeGreaterThan(20).containsEntry("observation", 2)
                .containsEntry("grouping_wish", 2).containsEntry("review_seal", 1).containsEntry("lesson_choice", 1);

        assertThat(erasure.erase(target(), Why.FAMILY_ASKED, null)).isGreaterThan(25);

        assertThat(holding(canary.texts())).isEmpty();
        verifies();
        assertThat(one("select string_agg(t::text, ';' order by t::text) from (select school_key, given_name from child"
                + " where district_id = 77 union all select observation_id::text, note from observation"
                + " where district_id = 77 union all select title, '' from unit_check"
                + " union all select reason, '' from seating_place where district_id = 77) t")).isEqualTo(others);
        assertThat(erasure.withKey(Canary.KEY)).isEmpty();
    }

    @Test
    void whatIsOfSeveralStaysWithoutTheOne() throws SQLException {
        String sealed = one("select digest from review_seal");
        erasure.erase(target(), Why.LAW, null);
        assertThat(one("select content from review_seal")).contains("0.5").doesNotContain("0.75");
        assertThat(one("select first_digest from review_seal")).isEqualTo(sealed);
        assertThat(one("select digest from review_seal")).isNotEqualTo(sealed);
        assertThat(one("select cardinality(children) || ' ' || has || ' ' || not_yet from lesson_choice"))
                .isEqualTo("1 10 2");
    }

    @Test
    void theProofIsOneRowThatNamesNobody() throws SQLException {
        ErasureTarget gone = target();
        int rows = erasure.erase(gone, Why.RETENTION_ENDED, null);
        assertThat(one("select count(*) || ' ' || min(why) || ' ' || min(row_count) from erasure"))
                .isEqualTo("1 retention_ended " + rows);
        assertThat(erasure.erase(gone, Why.LAW, null)).as("twice").isZero();
        assertThat(one("select count(*) from erasure")).isEqualTo("1");
    }

    /** Names of others and words on others may mean the child; they are told, and left to a reader. */
    @Test
    void wordsOnOthersThatHoldTheNameAreTold() throws SQLException {
        try (Connection all = database.superuser(); Statement statement = all.createStatement()) {
            statement.execute("update child set given_name = 'Ilka' where school_key = '" + Canary.KEY + "'");
            statement.execute("insert into concern (district_id, child_id, kind, raised_on, words, recorded_by)"
                    + " select 77, child_id, 'concern', '2026-03-06', words, (select adult_id from adult where district_id"
                    + " = 77) from child, (values ('helped by Ilka.'), ('an Ilkan word')) v(words)"
                    + " where school_key = 'stays-1'");
        }
        assertThat(erasure.preview(target()).mentions()).isEqualTo(Map.of("concern", 1));
    }

    @Test
    void onlyTheEraserCanAndItHasToGoThroughWhole() throws SQLException {
        try (Connection runTime = database.runTime().getConnection(); Statement statement = runTime.createStatement()) {
            assertThat(one("select current_user")).isNotEqualTo("stepwell_app");
            runTime.setAutoCommit(false);
            statement.execute("select set_config('stepwell.for', '77/', true)");
            assertThat(user(statement)).isEqualTo("stepwell_app");
            for (String sql : List.of("delete from observation", "delete from child", "delete from access_key",
                    "insert into erasure (district_id, key_digest, why, row_count) values (77, repeat('a', 64), 'law', 1)")) {
                var before = runTime.setSavepoint();
                assertThatThrownBy(() -> statement.execute(sql)).as(sql).hasMessageContaining("permission denied");
                runTime.rollback(before);
            }
        }
        try (Connection all = database.superuser(); Statement statement = all.createStatement()) {
            statement.execute("create table late (district_id int, child_id uuid, constraint late_of_child foreign key"
                    + " (district_id, child_id) references child)");
            statement.execute("insert into late select district_id, child_id from child where school_key = '"
                    + Canary.KEY + "'");
            statement.execute("grant select, delete on late to stepwell_eraser");
        }
        Map<String, Integer> before = holding(canary.texts());
        assertThatThrownBy(() -> erasure.erase(target(), Why.LAW, null)).isInstanceOf(StartProblem.class)
                .hasMessageContaining("late_of_child");
        assertThat(holding(canary.texts())).isEqualTo(before);
    }

    /** 34 CFR 99.10 (e): nothing is destroyed while a request to see it is open. */
    @Test
    void anOpenRequestOfTheFamilyHoldsTheChild() throws SQLException {
        try (Connection all = database.superuser(); Statement statement = all.createStatement()) {
            statement.execute("insert into family_request_step (district_id, request_id, step, kind, done_on, recorded_by)"
                    + " select district_id, request_id, 3, 'hearing_asked', '2026-04-04', recorded_by from family_request");
            assertThatThrownBy(() -> erasure.erase(target(), Why.LAW, null)).isInstanceOf(Refused.class)
                    .hasMessageContaining("99.10");
            assertThat(one("select count(*) from erasure")).isEqualTo("0");
            statement.execute("insert into family_request_step (district_id, request_id, step, kind, done_on, words,"
                    + " recorded_by) select district_id, request_id, 4, 'hearing_refused', '2026-04-05', 'no',"
                    + " recorded_by from family_request");
            statement.execute("insert into family_request (district_id, request_id, child_id, kind, asked_on, recorded_by)"
                    + " select district_id, gen_random_uuid(), child_id, 'inspect', '2026-04-06', recorded_by"
                    + " from family_request");
            assertThatThrownBy(() -> erasure.erase(target(), Why.LAW, null)).isInstanceOf(Refused.class);
            statement.execute("insert into family_request_step (district_id, request_id, step, kind, done_on, recorded_by)"
                    + " select district_id, request_id, 1, 'inspected', '2026-04-07', recorded_by from family_request"
                    + " where kind = 'inspect'");
        }
        assertThat(erasure.erase(target(), Why.LAW, null)).isPositive();
    }

    private static String user(Statement statement) throws SQLException {
        try (ResultSet row = statement.executeQuery("select current_user")) {
            row.next();
            return row.getString(1);
        }
    }

    @Test
    void everyKindIsRemovedTakenOutOrStaysForAReason() {
        assertThat(Stream.of(RecordKind.values()).filter(kind -> !kind.removed()))
                .containsExactly(RecordKind.LESSON_CHOICES, RecordKind.ACCESS);
    }
}
