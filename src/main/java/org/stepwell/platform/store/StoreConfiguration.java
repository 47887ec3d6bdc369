package org.stepwell.platform.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.autoconfigure.condition.ConditionalOnMissingBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;
import org.springframework.core.env.Environment;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartProblem;

/**
 * Gives every feature one migrated data source of the run-time user. A context that already has an {@link OpenStore}
 * uses that one; with the property {@code stepwell.store=join} it joins the server that runs on the home.
 */
@Configuration(proxyBeanMethods = false)
public class StoreConfiguration {
    private static final int POOL_SIZE = 10;
    private static final int CONNECTION_TIMEOUT_MILLIS = 5_000;

    @Bean
    @ConditionalOnMissingBean
    OpenStore openStore(Environment environment, ObjectProvider<Clock> clock) {
        Settings settings = Settings.from(environment::getProperty);
        Clock time = clock.getIfAvailable(Clock::systemUTC);
        boolean join = "join".equals(environment.getProperty("stepwell.store"));
        return join ? OpenStore.join(settings, time) : OpenStore.open(settings, time);
    }

    @Bean
    @Primary
    HikariDataSource dataSource(OpenStore store) {
        HikariDataSource pool = pool(store);
        try (Connection runTime = pool.getConnection()) {
            DurabilityCheck.refuseUnlessSafe(runTime);
            StoreSchema.migrate(store);
            DurabilityCheck.refuseUnlessSafe(runTime);
            return pool;
        } catch (SQLException refused) {
            pool.close();
            throw new StartProblem("PostgreSQL at " + store.url() + " refuses the run-time user " + store.runTime()
                    + ": " + refused.getMessage() + " Check STEPWELL_DB_USER and its password.", refused);
        } catch (RuntimeException unsafe) {
            pool.close();
            throw unsafe;
        }
    }

    @Bean
    OwnerConnections ownerConnections(OpenStore store) {
        return new OwnerConnections(store);
    }

    static HikariDataSource pool(OpenStore store) {
        HikariConfig config = new HikariConfig();
        config.setPoolName("run-time");
        config.setJdbcUrl(store.url());
        config.setUsername(store.runTime().user());
        config.setPassword(store.runTime().password());
        config.setMaximumPoolSize(POOL_SIZE);
        config.setMinimumIdle(2);
        config.setConnectionTimeout(CONNECTION_TIMEOUT_MILLIS);
        config.setInitializationFailTimeout(-1);
        config.setConnectionInitSql("set time zone 'UTC'");
        config.addDataSourceProperty("ApplicationName", "stepwell");
        config.addDataSourceProperty("tcpKeepAlive", "true");
        return new HikariDataSource(config);
    }
}
