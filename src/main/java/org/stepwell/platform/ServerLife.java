package org.stepwell.platform;

import java.io.PrintStream;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.stepwell.platform.store.OpenStore;

/** One run of the server, from opening the store to the last process being gone. */
public final class ServerLife {
    private ServerLife() {
    }

    /**
     * Starts the server and returns once it serves; it then runs until the process is told to stop. A signal first
     * ends the web server, which finishes what it is answering, then the pool, then the embedded PostgreSQL.
     *
     * @param application the class that Spring Boot starts from
     * @param settings the environment
     * @param clock the time
     * @param out where the address and the notices go
     * @throws StartProblem when something outside the program stands in the way; everything started is stopped again
     */
    public static void start(Class<?> application, Settings settings, Clock clock, PrintStream out) {
        AtomicReference<ConfigurableApplicationContext> running = new AtomicReference<>();
        OpenStore store = OpenStore.open(settings, clock);
        Thread stop = Thread.ofPlatform().name("stop").unstarted(() -> {
            ConfigurableApplicationContext context = running.get();
            if (context != null) {
                context.close();
            }
            store.close();
        });
        Runtime.getRuntime().addShutdownHook(stop);
        try {
            SpringApplication spring = new SpringApplication(application);
            spring.setRegisterShutdownHook(false);
            spring.setLogStartupInfo(false);
            spring.addInitializers((ApplicationContextInitializer<ConfigurableApplicationContext>) context -> {
                running.set(context);
                give(store, context.getBeanFactory());
            });
            announce(spring.run(), settings, clock, out);
        } catch (RuntimeException failed) {
            store.close();
            throw meant(failed);
        }
    }

    private static void give(OpenStore store, ConfigurableListableBeanFactory beans) {
        beans.registerSingleton("openStore", store);
    }

    private static void announce(ConfigurableApplicationContext context, Settings settings, Clock clock,
            PrintStream out) {
        String port = context.getEnvironment().getProperty("local.server.port", Integer.toString(settings.port()));
        String address = settings.scheme() + "://localhost:" + port;
        // Asked for before anything is printed: whoever reads the address may rely on the start being over.
        List<String> notices = context.getBeanProvider(StartNotice.class).orderedStream()
                .flatMap(notice -> notice.lines().stream()).toList();
        OpenStore.sayServing(settings, clock, address);
        out.println(address);
        notices.forEach(out::println);
        out.flush();
    }

    private static RuntimeException meant(RuntimeException failed) {
        for (Throwable cause = failed; cause != null; cause = cause.getCause()) {
            if (cause instanceof StartProblem problem) {
                return problem;
            }
            if (cause instanceof org.springframework.boot.web.server.PortInUseException taken) {
                return new StartProblem("Port " + taken.getPort() + " is taken by another program. Stop that one, or "
                        + "set STEPWELL_PORT to a free port.", failed);
            }
        }
        return failed;
    }
}
