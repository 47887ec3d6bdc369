package org.stepwell;

import org.springframework.core.Ordered;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextHolderStrategy;
import org.springframework.test.context.TestContext;
import org.springframework.test.context.TestExecutionListener;

/**
 * Several Spring contexts live in one run of the tests, and the last one started decides where the whole process looks
 * for who is signed in. Before each test of a context that was kept from earlier, its own place is put back.
 */
public final class OwnSecurityContext implements TestExecutionListener, Ordered {
    @Override
    public int getOrder() {
        return Ordered.LOWEST_PRECEDENCE;
    }

    @Override
    public void beforeTestMethod(TestContext test) {
        if (test.hasApplicationContext()) {
            test.getApplicationContext().getBeanProvider(SecurityContextHolderStrategy.class)
                    .ifAvailable(SecurityContextHolder::setContextHolderStrategy);
        }
    }
}
