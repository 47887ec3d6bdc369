package org.stepwell.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.stepwell.TestDatabase;
import org.stepwell.core.problem.Refused;
import org.stepwell.integrity.Integrity;

/** Each kind of record goes alone, from a child with a row in every table, and takes nothing of another kind along. */
class RetentionTest {
    @Test
    void everyKindOfRecordBelongsToOnePeriod() {
        List<RecordKind> all = Arrays.stream(RetentionKind.values()).flatMap(kind -> kind.own().stream()).toList();
        assertThat(all).doesNotHaveDuplicates().containsExactlyInAnyOrder(RecordKind.values());
    }

    @Test
    void eachKindGoesAloneAndOthersStay() throws SQLException {
        Canary canary = new Canary();
        try (TestDatabase database = TestDatabase.fresh()) {
            try (Connection all = database.superuser()) {
                canary.plant(all);
            }
            ErasureStore store = new ErasureStore(database.store().ownerConnections());
            ErasureTarget target = store.withKey(Canary.KEY).getFirst();
            execute(database, "delete from family_request_step; delete from family_request");
            for (RetentionKind kind : RetentionKind.values()) {
                if (kind == RetentionKind.CHILD) {
                    continue;
                }
                Map<String, Integer> before = new TreeMap<>(store.rows(target));
                Set<String> tables = kind.own().stream().map(RecordKind::table).collect(Collectors.toSet());
                assertThat(before.keySet()).as("%s", kind).containsAll(tables);
                assertThat(store.eraseKinds(target, kind.records())).isPositive();
                Map<String, Integer> expected = new TreeMap<>(before);
                expected.keySet().removeAll(tables);
                if (kind == RetentionKind.DECISIONS) {
                    expected.remove("review_seal");
                }
                assertThat(store.rows(target)).as("%s", kind).isEqualTo(expected);
                assertThat(store.eraseKinds(target, kind.records())).as("twice").isZero();
            }
            assertThat(store.withKey(Canary.KEY)).hasSize(1);
            assertThat(Integrity.over(database.store()).check()).allSatisfy(answer -> assertThat(answer.wrong())
                    .as(answer.question()).isEmpty());
        }
    }

    /** 34 CFR 99.10 (e): nothing is destroyed while a request is open. */
    @Test
    void nothingGoesWhileARequestIsOpen() throws SQLException {
        Canary canary = new Canary();
        try (TestDatabase database = TestDatabase.fresh()) {
            try (Connection all = database.superuser()) {
                canary.plant(all);
            }
            execute(database, "delete from family_request_step");
            ErasureStore store = new ErasureStore(database.store().ownerConnections());
            ErasureTarget target = store.withKey(Canary.KEY).getFirst();
            Map<String, Integer> before = store.rows(target);
            for (RetentionKind kind : RetentionKind.values()) {
                assertThatThrownBy(() -> store.eraseKinds(target, kind.records())).isInstanceOf(Refused.class);
            }
            assertThat(store.rows(target)).isEqualTo(before);
        }
    }

    private static void execute(TestDatabase database, String sql) throws SQLException {
        try (Connection all = database.superuser(); Statement statement = all.createStatement()) {
            statement.execute("set session_replication_role = replica; " + sql); // past the triggers that keep facts
        }
    }
}
