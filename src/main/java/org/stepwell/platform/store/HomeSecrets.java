package org.stepwell.platform.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import org.stepwell.platform.Settings;

/**
 * Keys that lie in the home beside the store and never in it, so that a copy of the store alone opens nothing they
 * protect. Whoever moves the store to another home takes the files {@code secret-*} along.
 */
@Component
public final class HomeSecrets {
    private final Environment environment;

    HomeSecrets(Environment environment) {
        this.environment = environment;
    }

    /** A key of 256 bits by name, made at first use and the same ever after. */
    public synchronized byte[] key(String name) {
        try (StoreHome home = new StoreHome(Settings.from(environment::getProperty).home())) {
            return MessageDigest.getInstance("SHA-256")
                    .digest(home.secret(name).getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException(missing);
        }
    }
}
