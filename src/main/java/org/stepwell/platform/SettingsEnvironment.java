package org.stepwell.platform;

import org.springframework.boot.EnvironmentPostProcessor;
import org.springframework.boot.SpringApplication;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;

/** Gives the environment variables to Spring Boot's web server, below anything said more directly. */
final class SettingsEnvironment implements EnvironmentPostProcessor {
    @Override
    public void postProcessEnvironment(ConfigurableEnvironment environment, SpringApplication application) {
        Settings settings = Settings.from(environment::getProperty);
        environment.getPropertySources().addLast(new MapPropertySource("stepwell", settings.serverProperties()));
    }
}
