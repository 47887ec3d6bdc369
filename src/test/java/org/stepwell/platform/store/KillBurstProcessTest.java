package org.stepwell.platform.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stepwell.platform.Settings;

/** What the database acknowledged survives the hard end of all its processes, in the middle of a burst. */
class KillBurstProcessTest {
    private static final int KILLS = 3;
    private static final int WRITERS = 4;

    @TempDir
    Path folder;

    private static void insert(HikariDataSource pool, UUID id) throws SQLException {
        try (Connection connection = pool.getConnection();
                var statement = connection.prepareStatement("insert into burst values (?) on conflict do nothing")) {
            statement.setObject(1, id);
            statement.executeUpdate();
        }
    }

    private static void write(HikariDataSource pool, AtomicBoolean going, Set<UUID> acknowledged) {
        while (going.get()) {
            UUID id = UUID.randomUUID();
            try {
                insert(pool, id);
                acknowledged.add(id);
            } catch (SQLException down) {
                Thread.onSpinWait();
            }
        }
    }

    private static void killEverything(Path home) {
        ProcessHandle.allProcesses().filter(process -> process.info().command()
                .filter(command -> command.startsWith(home.toString())).isPresent()).forEach(ProcessHandle::destroyForcibly);
    }

    @Test
    void everyAcknowledgedRowIsThereOnceAfterThreeHardKills() throws Exception {
        Path home = folder.resolve("home");
        Settings settings = Settings.from(Map.of("STEPWELL_HOME", home.toString())::get);
        Set<UUID> acknowledged = ConcurrentHashMap.newKeySet();
        try (OpenStore store = OpenStore.open(settings, Clock.systemUTC())) {
            try (Connection owner = new OwnerConnections(store).owner(); var statement = owner.createStatement()) {
                statement.execute("create table burst (id uuid primary key)");
                statement.execute("grant select, insert on burst to stepwell_app");
            }
            AtomicBoolean going = new AtomicBoolean(true);
            try (HikariDataSource pool = StoreConfiguration.pool(store);
                    var writers = Executors.newVirtualThreadPerTaskExecutor()) {
                for (int writer = 0; writer < WRITERS; writer++) {
                    writers.submit(() -> write(pool, going, acknowledged));
                }
                for (int kill = 0; kill < KILLS; kill++) {
                    int seen = acknowledged.size();
                    await().atMost(Duration.ofMinutes(1)).until(() -> acknowledged.size() > seen + 200);
                    killEverything(home);
                }
                int seen = acknowledged.size();
                await().atMost(Duration.ofMinutes(1)).until(() -> acknowledged.size() > seen + 200);
                going.set(false);
            }
            Set<UUID> stored = new HashSet<>();
            int rows = 0;
            try (Connection owner = new OwnerConnections(store).owner(); var statement = owner.createStatement();
                    var found = statement.executeQuery("select id from burst")) {
                while (found.next()) {
                    stored.add(found.getObject(1, UUID.class));
                    rows++;
                }
            }
            assertThat(stored).hasSize(rows).containsAll(acknowledged);
        }
    }
}
