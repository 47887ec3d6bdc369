package org.stepwell;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import javax.sql.DataSource;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.stepwell.platform.store.OpenStore;
import org.stepwell.platform.store.OwnerConnections;
import org.stepwell.platform.store.TestServer;

/**
 * A real PostgreSQL database with all tables and no rows, for one test class. Close it in {@code @AfterAll}. A test
 * that starts Spring imports {@link InSpring} instead and gets the same as the context's store.
 */
public final class TestDatabase implements AutoCloseable {
    private final OpenStore store;
    private final HikariDataSource runTime;

    private TestDatabase(OpenStore store) {
        this.store = store;
        this.runTime = TestServer.shared().pool(store);
    }

    /** A new, migrated, empty database. */
    public static TestDatabase fresh() {
        return new TestDatabase(TestServer.shared().freshStore());
    }

    /** The pool of the run-time user, exactly as the program makes it. */
    public DataSource runTime() {
        return runTime;
    }

    /** Connections of the owner and the eraser. */
    public OwnerConnections ownerConnections() {
        return TestServer.shared().ownerConnections(store);
    }

    /** A superuser's connection, for looking past every policy; to be closed by the caller. */
    public Connection superuser() {
        String url = store.url().split("\\?", 2)[0];
        return TestServer.shared().superuser(url.substring(url.lastIndexOf('/') + 1));
    }

    /** Address, users and roles. */
    public OpenStore store() {
        return store;
    }

    @Override
    public void close() {
        runTime.close();
        TestServer.shared().drop(store);
    }

    /** Puts a fresh database under a Spring context: {@code @Import(TestDatabase.InSpring.class)}. */
    @TestConfiguration(proxyBeanMethods = false)
    public static class InSpring {
        @Bean
        OpenStore openStore() {
            return TestServer.shared().freshStore();
        }
    }
}
