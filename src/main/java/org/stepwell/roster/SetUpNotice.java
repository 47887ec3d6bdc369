package org.stepwell.roster;

import java.util.List;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartNotice;

/** Tells at the start of an empty store how the first adult gets in. */
@Component
class SetUpNotice implements StartNotice {
    private final SetUpCode code;
    private final Environment environment;
    private String said = "";

    SetUpNotice(SetUpCode code, Environment environment) {
        this.code = code;
        this.environment = environment;
    }

    @Override
    public synchronized List<String> lines() {
        return code.now().map(now -> {
            said = now;
            Settings settings = Settings.from(environment::getProperty);
            String port = environment.getProperty("local.server.port", Integer.toString(settings.port()));
            return List.of(
                    "Nobody can sign in yet. Set up school, class and first teacher in a browser:",
                    "  " + settings.scheme() + "://localhost:" + port + "/set-up",
                    "  with the code " + now + " (good once; the next start prints another)",
                    "Or let the first teacher in from another terminal, for instance:",
                    "  ./stepwell adult add ana@hill --name \"Ana Ruiz\" --school Hill --time-zone America/Chicago"
                            + " --class \"Room 1\" --new-class");
        }).orElse(List.of());
    }

    /** Prints the lines when a store became empty after its start, such as by the removal of the sample. */
    synchronized void sayLate() {
        if (code.now().filter(now -> !now.equals(said)).isPresent()) {
            lines().forEach(System.out::println);
        }
    }
}
