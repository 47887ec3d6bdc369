package org.stepwell.platform;

import org.springframework.boot.SpringBootExceptionReporter;
import org.springframework.context.ConfigurableApplicationContext;
import org.jspecify.annotations.Nullable;

/** Keeps Spring Boot from printing a stack trace for what the start explains in one line by itself. */
final class ProblemReport implements SpringBootExceptionReporter {
    ProblemReport(@Nullable ConfigurableApplicationContext context) {
    }

    @Override
    public boolean reportException(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof StartProblem
                    || cause instanceof org.springframework.boot.web.server.PortInUseException) {
                return true;
            }
        }
        return false;
    }
}
