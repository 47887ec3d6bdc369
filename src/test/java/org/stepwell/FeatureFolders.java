package org.stepwell;

import java.util.Set;
import java.util.stream.Stream;
import org.springframework.modulith.core.ApplicationModuleDetectionStrategy;
import org.springframework.modulith.core.ApplicationModuleInformation;
import org.springframework.modulith.core.JavaPackage;
import org.springframework.modulith.core.NamedInterfaces;

/**
 * How the house is divided: each folder below the base package is a module. A feature offers what is public in its own
 * package, and in its {@code ui} the parts that other screens are built from. {@code core} and {@code platform} are made
 * of folders only, so each of those is offered whole.
 */
public class FeatureFolders implements ApplicationModuleDetectionStrategy {
    private static final Set<String> OF_FOLDERS = Set.of("core", "platform");

    @Override
    public Stream<JavaPackage> getModuleBasePackages(JavaPackage base) {
        return ApplicationModuleDetectionStrategy.directSubPackage().getModuleBasePackages(base);
    }

    @Override
    public NamedInterfaces detectNamedInterfaces(JavaPackage base, ApplicationModuleInformation information) {
        return OF_FOLDERS.contains(base.getLocalName()) ? NamedInterfaces.forOpen(base)
                : NamedInterfaces.builder(base).matching("ui").build();
    }
}
