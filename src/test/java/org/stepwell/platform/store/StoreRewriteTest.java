package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.stepwell.integrity.Integrity;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;
import org.stepwell.records.Canary;
import org.stepwell.records.Erasure;

/** After erasure and its finish no byte of the home holds a mark of the child; before, each is found by the same search. */
@Execution(ExecutionMode.SAME_THREAD)
class StoreRewriteTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T08:00:00Z"), ZoneOffset.UTC);
    private static final String LOGGED = "a word in a statement that failed";

    @TempDir
    Path home;
    private final Canary canary = new Canary();

    private Settings settings() {
        return Settings.from(Map.of("STEPWELL_HOME", home.toString())::get);
    }

    private OpenStore open() {
        OpenStore store = OpenStore.open(settings(), CLOCK);
        StoreSchema.migrate(store);
        return store;
    }

    private Connection superuser(OpenStore store) throws SQLException, IOException {
        return DriverManager.getConnection(store.url(), "postgres",
                Files.readString(home.resolve("secret-superuser")).strip());
    }

    private void plants() throws Exception {
        try (OpenStore store = open(); Connection all = superuser(store); Statement statement = all.createStatement()) {
            canary.plant(all);
            assertThatThrownBy(() -> statement.execute("select '" + LOGGED + "' from nowhere"))
                    .isInstanceOf(SQLException.class);
        }
    }

    /** Files by how many of the marks stand in them; programs of PostgreSQL are not of the store. */
    private List<byte[]> found(List<byte[]> marks) throws IOException {
        List<byte[]> left = new ArrayList<>(marks);
        List<byte[]> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(home)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String bytes = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
                for (byte[] mark : List.copyOf(left)) {
                    if (bytes.contains(new String(mark, StandardCharsets.ISO_8859_1))) {
                        left.remove(mark);
                        found.add(mark);
                    }
                }
            }
        }
        return found;
    }

    private Map<String, String> rows(OpenStore store) throws SQLException, IOException {
        Map<String, String> rows = new TreeMap<>();
        try (Connection all = superuser(store); Statement statement = all.createStatement()) {
            for (String table : TableOrder.parentsFirst(statement)) {
                try (ResultSet row = statement.executeQuery("select count(*) || ' ' || coalesce(md5(string_agg(t::text, ';'"
                        + " order by t::text)), '') from " + table + " t")) {
                    row.next();
                    rows.put(table, row.getString(1));
                }
            }
        }
        return rows;
    }

    @Test
    void theBytesOfTheHomeHoldNothingOfAnErasedChild() throws Exception {
        plants();
        List<byte[]> marks = new ArrayList<>(canary.marks());
        marks.add(LOGGED.getBytes(StandardCharsets.UTF_8));
        assertThat(marks).hasSize(Canary.MARKS + 7);
        assertThat(found(marks)).as("the search finds all of them before").hasSameSizeAs(marks);
        Map<String, String> kept;
        try (OpenStore store = open()) {
            Erasure erasure = Erasure.over(store, HomeSecrets.of(settings()));
            erasure.erase(erasure.withKey(Canary.KEY).getFirst(), Erasure.Why.FAMILY_ASKED, null);
            kept = rows(store);
        }
        assertThat(found(marks)).as("deleting alone leaves most of them").hasSizeGreaterThan(40);

        assertThat(StoreRewrite.run(settings(), CLOCK)).isGreaterThan(15);

        assertThat(found(marks)).isEmpty();
        assertThat(found(List.of("stays-1".getBytes(StandardCharsets.UTF_8)))).as("the other child").hasSize(1);
        assertThat(home.resolve("data.before")).doesNotExist();
        assertThat(home.resolve("data.fresh")).doesNotExist();
        try (OpenStore store = open()) {
            assertThat(rows(store)).isEqualTo(kept);
            assertThat(Integrity.over(store).check()).allSatisfy(answer -> assertThat(answer.wrong()).isEmpty());
        }
        assertThat(found(marks)).as("after another start").isEmpty();
    }

    @Test
    void aCutBetweenAnyTwoStepsLeavesTheStore() throws Exception {
        plants();
        Files.move(home.resolve("data"), home.resolve("data.before"));
        Files.createDirectories(home.resolve("data.fresh"));
        holdsTheChild("the old one was moved aside and no new one moved in");
        Files.createDirectories(home.resolve("data.before"));
        Files.writeString(home.resolve("data.before/PG_VERSION"), "18\n");
        holdsTheChild("the new one moved in and the old one was not deleted yet");
        assertThat(home.resolve("data.before")).doesNotExist();
        assertThat(home.resolve("data.fresh")).doesNotExist();
    }

    private void holdsTheChild(String when) throws Exception {
        try (OpenStore store = open()) {
            assertThat(Erasure.over(store, HomeSecrets.of(settings())).withKey(Canary.KEY)).as(when).hasSize(1);
        }
    }

    @Test
    void itRefusesWhileAServerRuns() {
        try (OpenStore store = open()) {
            assertThat(store.url()).contains("127.0.0.1");
            assertThatThrownBy(() -> StoreRewrite.run(settings(), CLOCK)).isInstanceOf(StartProblem.class)
                    .hasMessageContaining("Stop it first");
        }
    }
}
