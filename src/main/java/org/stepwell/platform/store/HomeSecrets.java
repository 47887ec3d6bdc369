package org.stepwell.platform.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.function.Supplier;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.stepwell.platform.Settings;

/**
 * Keys that lie in the home beside the store and never in it, so that a copy of the store alone opens nothing they
 * protect. Whoever moves the store to another home takes the files {@code secret-*} along.
 */
@Component
public final class HomeSecrets {
    private final Supplier<Settings> settings;

    @Autowired
    HomeSecrets(Environment environment) {
        this(() -> Settings.from(environment::getProperty));
    }

    private HomeSecrets(Supplier<Settings> settings) {
        this.settings = settings;
    }

    /** Those of a home, for a single command. */
    public static HomeSecrets of(Settings settings) {
        return new HomeSecrets(() -> settings);
    }

    /** A key of 256 bits by name, made at first use and the same ever after. */
    public synchronized byte[] key(String name) {
        try (StoreHome home = new StoreHome(settings.get().home())) {
            return MessageDigest.getInstance("SHA-256")
                    .digest(home.secret(name).getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException(missing);
        }
    }
}
