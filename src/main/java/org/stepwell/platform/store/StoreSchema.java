package org.stepwell.platform.store;

import java.util.Arrays;
import java.util.Map;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationState;
import org.flywaydb.core.api.configuration.FluentConfiguration;
import org.stepwell.platform.StartProblem;

/** Brings the tables of a store to this program's version, as the owner. */
final class StoreSchema {
    private StoreSchema() {
    }

    static Flyway flyway(OpenStore store) {
        return configured(store).load();
    }

    private static FluentConfiguration configured(OpenStore store) {
        return Flyway.configure()
                .dataSource(store.url(), store.owner().user(), store.owner().password())
                .locations("classpath:db/migration")
                .placeholders(Map.of("app_role", store.runTime().user(), "owner_role", store.owner().user(),
                        "eraser_role", store.eraserRole()))
                .connectRetries(3);
    }

    static void migrate(OpenStore store) {
        try {
            // Features are given numbers before they are done: a lower one may come after a higher one.
            boolean late = Arrays.stream(flyway(store).info().all())
                    .anyMatch(one -> one.getState() == MigrationState.IGNORED);
            configured(store).outOfOrder(late).load().migrate();
        } catch (FlywayException failed) {
            throw new StartProblem("The tables cannot be brought to this version: " + failed.getMessage().strip(),
                    failed);
        }
    }
}
