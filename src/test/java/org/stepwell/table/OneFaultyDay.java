package org.stepwell.table;

import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/** Gives every test class that asks the same server, proxy and browser, and ends them after the last one. */
final class OneFaultyDay implements ParameterResolver {
    @Override
    public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
        return parameter.getParameter().getType() == FaultyDay.class;
    }

    @Override
    public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
        return context.getRoot().getStore(Namespace.create(OneFaultyDay.class))
                .computeIfAbsent(FaultyDay.class, made -> new FaultyDay(), FaultyDay.class);
    }
}
