package org.stepwell.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.stepwell.platform.Settings;
import org.stepwell.platform.StartNotice;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.security.DistrictScope;

/**
 * Loads the sample into an empty store it was not taken out of, sets the sample passwords at each start, and prints the
 * sign-ins.
 */
@Component
class SampleStart implements ApplicationRunner, StartNotice {
    private static final List<String> SIGN_INS =
            List.of("teacher@sample", "coteacher@sample", "specialist@sample", "lead@sample");

    private final SampleLoader loader;
    private final SampleRemoval removal;
    private final AccountService accounts;
    private final Settings settings;
    private final List<String> lines = new ArrayList<>();

    SampleStart(SampleLoader loader, SampleRemoval removal, AccountService accounts, Environment environment) {
        this.loader = loader;
        this.removal = removal;
        this.accounts = accounts;
        this.settings = Settings.from(environment::getProperty);
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (settings.sample() && !accounts.anybody() && !removal.removedBefore()) {
            loader.load();
        }
        Map<String, UUID> adults = accounts.known(SampleLoader.DISTRICT, SIGN_INS);
        if (!settings.sample() || adults.isEmpty()) {
            return;
        }
        String password = settings.samplePassword() == null ? AccountService.randomPassword()
                : settings.samplePassword();
        DistrictScope.in(SampleLoader.DISTRICT, () -> {
            adults.values().forEach(id -> accounts.setPassword(SampleLoader.DISTRICT, id, password));
            return adults;
        });
        lines.add("Sample sign-ins, all with the password " + password + ":");
        SIGN_INS.stream().filter(adults::containsKey).forEach(name -> lines.add("  " + name));
    }

    @Override
    public List<String> lines() {
        return List.copyOf(lines);
    }
}
