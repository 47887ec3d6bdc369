package org.stepwell.platform.store;

import java.util.Map;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.stepwell.platform.StartProblem;

/** Brings the tables of a store to this program's version, as the owner. */
final class StoreSchema {
    private StoreSchema() {
    }

    static Flyway flyway(OpenStore store) {
        return Flyway.configure()
                .dataSource(store.url(), store.owner().user(), store.owner().password())
                .locations("classpath:db/migration")
                .placeholders(Map.of("app_role", store.runTime().user(), "owner_role", store.owner().user(),
                        "eraser_role", store.eraserRole()))
                .connectRetries(3)
                .load();
    }

    static void migrate(OpenStore store) {
        try {
            flyway(store).migrate();
        } catch (FlywayException failed) {
            throw new StartProblem("The tables cannot be brought to this version: " + failed.getMessage().strip(),
                    failed);
        }
    }
}
