package org.stepwell.tier;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.stepwell.Application;
import org.stepwell.OnTheSample;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.platform.store.TestServer;

/**
 * What row-level security costs the class map: the same picture with it and without, by turns, in one run. Not part of
 * the tests: {@code mvn test -Dtest=RowSecurityBench}.
 */
@SpringBootTest(classes = Application.class, properties = {"STEPWELL_SAMPLE_PASSWORD=a-password-of-the-tests",
        "stepwell.test=RowSecurityBench"})
class RowSecurityBench extends OnTheSample {
    private static final int ROUNDS = 15;
    private static final int CALLS = 5;

    @Autowired
    private TierService tiers;
    @Autowired
    private OpenStore store;

    private void rowSecurity(String state) throws SQLException {
        String url = store.url().split("\\?", 2)[0];
        try (Connection all = TestServer.shared().superuser(url.substring(url.lastIndexOf('/') + 1));
                Statement statement = all.createStatement()) {
            statement.execute("do $$ declare t regclass; begin for t in select distinct polrelid::regclass from pg_policy"
                    + " loop execute format('alter table %s " + state + " row level security', t); end loop; end $$");
        }
    }

    private double millis() {
        long begun = System.nanoTime();
        for (int i = 0; i < CALLS; i++) {
            assertThat(tiers.picture(room)).isNotNull();
        }
        return (System.nanoTime() - begun) / 1e6 / CALLS;
    }

    @Test
    void classMapWithRowSecurityAndWithout() throws SQLException {
        List<Double> with = new ArrayList<>();
        List<Double> without = new ArrayList<>();
        for (int round = -3; round < ROUNDS; round++) {
            rowSecurity("enable");
            millis();
            double held = millis();
            rowSecurity("disable");
            millis();
            double open = millis();
            if (round >= 0) {
                with.add(held);
                without.add(open);
            }
        }
        with.sort(null);
        without.sort(null);
        System.out.printf("class map: with %.1f ms, without %.1f ms, %.3f times%n", with.get(ROUNDS / 2),
                without.get(ROUNDS / 2), with.get(ROUNDS / 2) / without.get(ROUNDS / 2));
    }
}
