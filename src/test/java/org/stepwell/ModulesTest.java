package org.stepwell;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.equivalentTo;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModule;
import org.springframework.modulith.core.ApplicationModules;

/** The entry point stands outside: it names the command line, which names it. */
class ModulesTest {
    private static final ApplicationModules MODULES =
            ApplicationModules.of(Application.class, equivalentTo(Application.class));

    @Test
    void modulesGoInNoCircleAndUseOnlyWhatOthersOffer() {
        MODULES.verify();
    }

    @Test
    void everyFeatureFolderIsAModule() {
        assertThat(MODULES.stream().map(ApplicationModule::getIdentifier).map(Object::toString))
                .contains("core", "platform", "privacy", "roster", "progression", "observation", "pacing", "tier",
                        "trend", "review", "sample", "cli");
    }
}
